package settlemark.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import settlemark.session.StoreHealth;

/** Looks at a workspace's disk and log. */
final class Health {
    /** Days of a few gauges, or an hour of a full bench. */
    static final long LEAST_FREE_BYTES = 256L << 20;

    /** A log that is checkpointed stays far below. */
    static final long MOST_LOG_BYTES = 64L << 20;

    private Health() {}

    static StoreHealth of(Path file) {
        return of(file, free(file), logBytes(file));
    }

    static StoreHealth of(Path file, long freeBytes, long logBytes) {
        List<String> warnings = new ArrayList<>();
        if (freeBytes >= 0 && freeBytes < LEAST_FREE_BYTES) {
            warnings.add("the disk of workspace " + file + " is nearly full: " + (freeBytes >> 20)
                    + " MB are left; free space before it stops the session");
        }
        if (logBytes > MOST_LOG_BYTES) {
            warnings.add("the log of workspace " + file + " has grown to " + (logBytes >> 20)
                    + " MB, because another program has kept the workspace open for reading; end that program");
        }
        return new StoreHealth(freeBytes, logBytes, warnings);
    }

    private static long free(Path file) {
        try {
            return Files.getFileStore(file).getUsableSpace();
        } catch (IOException e) {
            return -1;
        }
    }

    private static long logBytes(Path file) {
        try {
            return Files.size(Connections.log(file));
        } catch (IOException e) {
            return 0;
        }
    }
}
