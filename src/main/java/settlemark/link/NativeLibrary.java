package settlemark.link;

import com.fazecast.jSerialComm.SerialPort;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import settlemark.session.LinkException;

/**
 * Loads the serial library's native part. The library itself would unpack it to one shared, predictable place: two
 * programs that start at once could load half a file, and anyone could have put another there. So it is unpacked to a
 * private folder first, and deleted as soon as it is loaded.
 */
final class NativeLibrary {
    /** The serial library's own setting. */
    private static final String PLACE = String.join(".", "jSerialComm", "library", "path");

    private static final String APP_ID = "fazecast.jSerialComm.appid";
    private static boolean loaded;

    private NativeLibrary() {}

    /** @throws LinkException with the folder and the remedy where it cannot be loaded */
    static synchronized void load() throws LinkException {
        if (loaded) {
            return;
        }
        Path folder = System.getProperty(PLACE) == null ? unpack() : null;
        try {
            if (System.getProperty(APP_ID) == null) {
                System.setProperty(APP_ID, "settlemark-" + System.getProperty("user.name", "any"));
            }
            if (folder != null) {
                System.setProperty(PLACE, folder.toString());
            }
            SerialPort.getVersion();
            loaded = true;
        } catch (LinkageError e) {
            throw new LinkException(refused(System.getProperty("java.io.tmpdir", "/tmp")), e);
        } finally {
            if (folder != null) {
                System.clearProperty(PLACE);
                delete(folder);
            }
        }
    }

    static String refused(String temporaryFolder) {
        return "the serial library cannot be loaded: the folder for temporary files, " + temporaryFolder
                + ", may forbid running programs (mount option noexec). Unpack libjSerialComm into a folder that allows"
                + " it and start with -D" + PLACE + "=FOLDER, or choose another with -Djava.io.tmpdir=FOLDER";
    }

    /** Null where this system is left to the library's own way. */
    private static @Nullable Path unpack() {
        if (!System.getProperty("os.name", "").toLowerCase(Locale.ROOT).contains("linux")) {
            return null;
        }
        String machine = switch (System.getProperty("os.arch", "")) {
            case "amd64", "x86_64" -> "x86_64";
            case "aarch64" -> "armv8_64";
            default -> "";
        };
        String name = "libjSerialComm.so";
        try (InputStream library = NativeLibrary.class.getResourceAsStream("/Linux/" + machine + "/" + name)) {
            if (library == null) {
                return null;
            }
            Path folder = Files.createTempDirectory("settlemark-");
            Files.copy(library, folder.resolve(name));
            return folder;
        } catch (IOException e) {
            return null;
        }
    }

    private static void delete(Path folder) {
        try {
            Files.deleteIfExists(folder.resolve("libjSerialComm.so"));
            Files.deleteIfExists(folder);
        } catch (IOException e) {
            // It stays in the folder for temporary files, which the system empties.
            return;
        }
    }
}
