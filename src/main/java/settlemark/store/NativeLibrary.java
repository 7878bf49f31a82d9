package settlemark.store;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.sqlite.NativeLibraryNotFoundException;

/**
 * SQLite is native code that the library unpacks into a temporary folder. Hardened machines forbid execution there, and
 * the library's own message does not say so.
 */
final class NativeLibrary {
    private NativeLibrary() {}

    /** What to tell where a failure comes from the native code, empty where it does not. */
    static Optional<String> refusal(Throwable failure, MountTable mounts) {
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof LinkageError || cause instanceof NativeLibraryNotFoundException) {
                return Optional.of(words(folder(), mounts, String.valueOf(cause.getMessage())));
            }
        }
        return Optional.empty();
    }

    private static String words(Path folder, MountTable mounts, String detail) {
        String remedy = "; start with -Dorg.sqlite.tmpdir=FOLDER, where FOLDER is one that you may write to and"
                + " execute from";
        if (!Files.isDirectory(folder)) {
            return "SQLite's native library cannot be unpacked: the temp folder " + folder + " does not exist" + remedy;
        }
        if (!Files.isWritable(folder)) {
            return "SQLite's native library cannot be unpacked: the temp folder " + folder + " cannot be written"
                    + remedy;
        }
        boolean known = mounts.of(folder.toAbsolutePath().normalize())
                .map(MountTable.Mount::forbidsExecution)
                .orElse(false);
        return "SQLite's native library cannot be loaded: the temp folder forbids execution: " + folder
                + (known ? " (mounted noexec)" : " (" + detail + ")") + remedy;
    }

    private static Path folder() {
        return Path.of(System.getProperty("org.sqlite.tmpdir", System.getProperty("java.io.tmpdir", "/tmp")));
    }
}
