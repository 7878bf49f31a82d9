package settlemark.link;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Whether the kernel blocks a Bluetooth adapter (rfkill), by its files as the kernel's documentation of
 * {@code /sys/class/rfkill} describes them. For services that do not tell it themselves.
 */
final class BleRfkill {
    static final Path SYSTEM = Path.of("/sys/class/rfkill");

    private BleRfkill() {}

    /** @param adapter its name, such as {@code hci0} */
    static boolean isBlocked(Path switches, String adapter) {
        try (DirectoryStream<Path> all = Files.newDirectoryStream(switches)) {
            for (Path one : all) {
                if (read(one, "type").equals("bluetooth")
                        && read(one, "name").equals(adapter)
                        && (read(one, "soft").equals("1") || read(one, "hard").equals("1"))) {
                    return true;
                }
            }
        } catch (IOException e) {
            // No such switches on this system.
            return false;
        }
        return false;
    }

    private static String read(Path folder, String file) throws IOException {
        return Files.readString(folder.resolve(file), StandardCharsets.US_ASCII).strip();
    }
}
