package settlemark.link;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;

/**
 * Brings a radio link up: hear the probe, wait for the turn, stop the scan, connect, wait for the services. A probe that
 * is not heard is not called, because a call into the void holds the adapter's only turn for as long as it lasts.
 */
final class BleDial {
    private static final Duration STEP = Duration.ofMillis(250);
    private static final long FRESH_NANOS = 3_000_000_000L;

    private final BlePlace place;
    private final BleCentral central;
    private final BleGatt gatt;
    private final BleLink link;
    private final BooleanSupplier closed;
    private int brokeOff;
    /** Another program has its hands on the device: it is not ours to disconnect. */
    private boolean busy;

    BleDial(BlePlace place, BleGatt gatt, BleLink link) {
        this.place = place;
        this.central = place.central();
        this.gatt = gatt;
        this.link = link;
        this.closed = link::isClosed;
    }

    /**
     * A connection.
     *
     * @param device path of the connected device, whose characteristics are there
     * @param mark differs from the device's mark of now once the connection was lost
     */
    record Line(String device, long mark) {}

    Line line() throws BleFault {
        while (true) {
            String adapter = central.adapter(place.adapter());
            String device = hear(adapter);
            if (!central.takeTurn(adapter, closed)) {
                throw closing();
            }
            try {
                if (isFresh(device)) {
                    Line line = connect(adapter, device);
                    brokeOff = 0;
                    return line;
                }
            } finally {
                central.giveTurn(adapter);
            }
        }
    }

    static BleFault closing() {
        return BleFault.passing("closed");
    }

    private boolean isFresh(String device) {
        return isTrue(device, "Connected") || central.hearing().heardSince(device, System.nanoTime() - FRESH_NANOS);
    }

    private String hear(String adapter) throws BleFault {
        String device = place.device(adapter);
        long start = System.nanoTime();
        BleScan scan = central.scan(adapter);
        try {
            while (!isFresh(device)) {
                if (closed.getAsBoolean()) {
                    throw closing();
                }
                // The adapter may go, be blocked or switched off meanwhile.
                if (!central.adapter(place.adapter()).equals(adapter) || central.scan(adapter) != scan) {
                    throw BleFault.passing("the adapter changed; it is looked at again");
                }
                scan.want(this);
                scan.tend();
                if (System.nanoTime() - start > central.settings().hear().toNanos()) {
                    link.note(BleWords.notHeard(place.words()));
                }
                central.objects().await(() -> isFresh(device), STEP, closed);
            }
            return device;
        } finally {
            scan.leave(this);
        }
    }

    private Line connect(String adapter, String device) throws BleFault {
        BleScan scan = central.scan(adapter);
        scan.pause(this);
        try {
            long mark = central.hearing().mark(device);
            call(device);
            resolve(device, mark);
            return new Line(device, mark);
        } catch (BleFault fault) {
            if (!busy) {
                hangUp(device);
            }
            throw fault;
        } finally {
            scan.resume(this);
        }
    }

    private void call(String device) throws BleFault {
        busy = false;
        try {
            central.call(device, Bluez.DEVICE, "Connect", central.settings().connect(), closed, "");
        } catch (BluezError e) {
            if (!e.is("AlreadyConnected")) {
                throw refused(e);
            }
        }
    }

    private BleFault refused(BluezError e) {
        String probe = place.words();
        if (e.is("InProgress") || e.says("busy")) {
            busy = true;
            return BleFault.passing(BleWords.busy(probe));
        }
        if (e.is("AuthenticationFailed") || e.is("AuthenticationRejected")) {
            return BleFault.lasting(BleWords.pairing(probe));
        }
        if (e.is("NotReady")) {
            return place.loss();
        }
        if (e.is("Failed") || e.is("ConnectionAttemptFailed") || e.name().equals(BluezError.TIME_OUT)) {
            brokeOff++;
            return BleFault.passing(BleWords.brokeOff(probe, brokeOff));
        }
        if (e.is("UnknownObject") || e.is("DoesNotExist") || e.is("UnknownMethod")) {
            return BleFault.passing(BleWords.notHeard(probe));
        }
        return BleFault.passing(BleWords.general(probe, e));
    }

    /** Services may count as resolved before they are shown, and may be shown one by one. */
    private void resolve(String device, long mark) throws BleFault {
        Duration limit = central.settings().resolve();
        BooleanSupplier lost = () -> central.hearing().mark(device) != mark;
        Settled settled = new Settled(device);
        central.objects().await(() -> lost.getAsBoolean() || isTrue(device, "ServicesResolved"), limit, closed);
        if (isTrue(device, "ServicesResolved")) {
            central.objects()
                    .await(
                            () -> lost.getAsBoolean() || gatt.missing(device).isEmpty() || settled.isSo(),
                            limit,
                            closed);
        }
        if (closed.getAsBoolean()) {
            throw closing();
        }
        if (lost.getAsBoolean()) {
            brokeOff++;
            throw BleFault.passing(BleWords.brokeOff(place.words(), brokeOff));
        }
        if (!isTrue(device, "ServicesResolved")) {
            throw BleFault.passing(BleWords.unresolved(place.words(), limit.toSeconds()));
        }
        fit(device, limit);
    }

    private void fit(String device, Duration limit) throws BleFault {
        List<String> missing = gatt.missing(device);
        List<String> services = gatt.services(device);
        if (!missing.isEmpty() && services.isEmpty()) {
            throw BleFault.passing(BleWords.unresolved(place.words(), limit.toSeconds()));
        }
        if (!missing.isEmpty()) {
            throw BleFault.lasting(
                    BleWords.misfit(place.words(), place.profile().id(), missing, services));
        }
    }

    void hangUp(String device) {
        try {
            central.call(device, Bluez.DEVICE, "Disconnect", "");
        } catch (BluezError e) {
            // It is gone already, which is what was wanted.
            return;
        }
    }

    private boolean isTrue(String device, String property) {
        return BluezValues.isTrue(central.objects().property(device, Bluez.DEVICE, property));
    }

    /** Whether the list of characteristics has stopped growing. */
    private final class Settled {
        private final String device;
        private List<String> last = new ArrayList<>();
        private long sinceNanos = System.nanoTime();

        Settled(String device) {
            this.device = device;
        }

        boolean isSo() {
            List<String> now = central.objects().paths(Bluez.CHARACTERISTIC, device);
            if (!now.equals(last)) {
                last = now;
                sinceNanos = System.nanoTime();
            }
            return System.nanoTime() - sinceNanos > central.settings().settled().toNanos();
        }
    }
}
