package settlemark.link;

import java.util.concurrent.atomic.AtomicInteger;
import settlemark.session.LinkException;

/** Counts what the Bluetooth service tells of one object. */
final class BleVmWitness implements AutoCloseable {
    private final AtomicInteger told = new AtomicInteger();
    private final BluezBus bus;

    BleVmWitness(String address, String path) throws LinkException, BluezError {
        this.bus = BluezBus.open(address, new BluezBus.Ears() {
            @Override
            public void signal(String from, String member, Object[] arguments) {
                if (from.equals(path)) {
                    told.incrementAndGet();
                }
            }

            @Override
            public void lost() {}
        });
        bus.listen(Bluez.PROPERTIES, "PropertiesChanged");
    }

    int told() {
        return told.get();
    }

    @Override
    public void close() {
        bus.close(Fixtures.THREADS);
    }
}
