package settlemark.app;

import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ThreadFactory;
import java.util.function.BiConsumer;
import settlemark.link.BleHost;
import settlemark.link.BlePeripheral;
import settlemark.profile.Profile;
import settlemark.session.LinkException;

/** Makes this computer's ends of Bluetooth links. */
interface Radio {
    ThreadFactory THREADS = work -> {
        Thread thread = new Thread(work, "link");
        thread.setDaemon(true);
        return thread;
    };

    /** Through the system's Bluetooth service. */
    Radio OF_SYSTEM = new Radio() {
        @Override
        public BleHost host(Optional<String> adapter) {
            return new BleHost(THREADS, adapter);
        }

        @Override
        public BlePeripheral serve(Profile profile, String name, String adapter, BiConsumer<UUID, byte[]> written)
                throws LinkException {
            return BlePeripheral.start(
                    new BlePeripheral.Settings(profile, name, Optional.of(adapter), THREADS), written);
        }
    };

    /** @param adapter name or address of the one to use where an address names none, empty for the first */
    BleHost host(Optional<String> adapter);

    /**
     * Serves and advertises what a profile describes.
     *
     * @param name that is advertised
     * @param adapter name or address
     * @param written told which characteristic was written to, and what
     */
    BlePeripheral serve(Profile profile, String name, String adapter, BiConsumer<UUID, byte[]> written)
            throws LinkException;
}
