package settlemark.app;

import java.util.Optional;
import java.util.UUID;
import java.util.function.BiConsumer;
import settlemark.link.BleHost;
import settlemark.link.BlePeripheral;
import settlemark.link.RadioBench;
import settlemark.profile.Profile;
import settlemark.session.LinkException;

/** The program's Bluetooth, on the fake service. */
record BenchRadio(RadioBench bench) implements Radio {
    @Override
    public BleHost host(Optional<String> adapter) {
        return bench.host(adapter);
    }

    @Override
    public BlePeripheral serve(Profile profile, String name, String adapter, BiConsumer<UUID, byte[]> written)
            throws LinkException {
        return bench.serve(profile, name, adapter, written);
    }
}
