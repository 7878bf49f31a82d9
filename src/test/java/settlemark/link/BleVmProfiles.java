package settlemark.link;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.profile.ProfileReader;

/** The invented devices of the virtual machine's scenarios; both ends know them by the same key. Shipped profiles by their id. */
final class BleVmProfiles {
    static final String DATA = BleProfiles.uuid("FCD2");

    /** Inputs of {@code ess}. */
    static final int PRESSURE = 0;

    static final int BATTERY = 1;
    static final int VALUE = 2;
    static final int PRESENTATION = 3;
    static final int MEASUREMENT = 4;

    /** Where {@code four} is described. */
    static final Path FOUR = Path.of("src/test/ble-vm/four-channels.yaml").toAbsolutePath();

    private BleVmProfiles() {}

    private static Profile four() {
        try {
            return ProfileReader.read(FOUR.toString(), Files.readAllBytes(FOUR)).orThrow();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Profile of(String key) {
        return switch (key) {
            case "ess" ->
                new BleProfiles()
                        .described(BleProfiles.ESS, BleProfiles.PRESSURE, Double.NaN)
                        .reads(BleProfiles.BATTERY_SERVICE, BleProfiles.BATTERY, 0.5)
                        .notifies(BleProfiles.DEMO_SERVICE, BleProfiles.DEMO_VALUE, Double.NaN)
                        .startsBy(BleProfiles.DEMO_COMMAND, "A501")
                        .acts("zero", BleProfiles.DEMO_COMMAND, "5A", true)
                        .acts("beep", BleProfiles.DEMO_COMMAND, "07", false)
                        .recognised("^Settle ess$", BleProfiles.ESS)
                        .profile();
            case "fast" ->
                new BleProfiles()
                        .notifies(BleProfiles.DEMO_SERVICE, BleProfiles.DEMO_VALUE, 0.2)
                        .recognised("^Settle fast", BleProfiles.DEMO_SERVICE)
                        .profile();
            case "four" -> four();
            case "secret" ->
                new BleProfiles()
                        .notifies(BleProfiles.DEMO_SERVICE, BleProfiles.DEMO_VALUE, Double.NaN)
                        .recognised("^Settle secret$", BleProfiles.DEMO_SERVICE)
                        .profile();
            case "beacon" ->
                new BleProfiles()
                        .serviceData(DATA, 1)
                        .recognised("^Settle beacon$")
                        .profile();
            default -> ProfileLibrary.get(key);
        };
    }
}
