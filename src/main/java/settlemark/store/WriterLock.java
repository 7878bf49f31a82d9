package settlemark.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import settlemark.session.StoreException;

/**
 * The right to write to a workspace, held by one process at a time and given back by the system when that process dies.
 * It lies beside the workspace, in {@code FILE.lock}; the file stays, because removing it would let two processes each
 * hold a lock of that name.
 */
final class WriterLock implements AutoCloseable {
    /** Beyond the text, so that others can read the text on systems where a lock forbids that. */
    private static final long LOCKED_BYTE = 1L << 30;

    /**
     * What this process holds. A POSIX lock is lost as soon as the process closes any channel to the file, so a second
     * attempt within the process must not even open it.
     */
    private static final Set<Path> HELD = ConcurrentHashMap.newKeySet();

    private final Path path;
    private final FileChannel channel;

    private WriterLock(Path path, FileChannel channel) {
        this.path = path;
        this.channel = channel;
    }

    /** Takes the lock of a workspace given by its path without links. */
    static WriterLock take(Path workspace) throws StoreException {
        Path path = workspace.resolveSibling(workspace.getFileName() + ".lock");
        if (!HELD.add(path)) {
            throw held(workspace, "this process");
        }
        @Nullable FileChannel channel = null;
        boolean taken = false;
        try {
            channel = FileChannel.open(path, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            FileLock lock = channel.tryLock(LOCKED_BYTE, 1, false);
            if (lock == null) {
                throw held(workspace, holder(path));
            }
            sign(channel);
            taken = true;
            return new WriterLock(path, channel);
        } catch (IOException e) {
            throw new StoreException(
                    StoreException.Cause.FAULT,
                    "workspace " + workspace + ": its lock file " + path + " cannot be made (" + e.getMessage()
                            + "); make the folder writable, free space, or name another file with --workspace",
                    e);
        } finally {
            if (!taken) {
                closeQuietly(channel);
                HELD.remove(path);
            }
        }
    }

    /** Only so that others can say who it is: a full disk, which does not take the text, takes the lock. */
    private static void sign(FileChannel channel) {
        String words = "process " + ProcessHandle.current().pid() + "\n";
        try {
            channel.truncate(0);
            channel.write(ByteBuffer.wrap(words.getBytes(StandardCharsets.UTF_8)));
        } catch (IOException e) {
            // then it is "another process"
        }
    }

    private static String holder(Path path) {
        try {
            String words = Files.readString(path, StandardCharsets.UTF_8).strip();
            return words.isEmpty() ? "another process" : words;
        } catch (IOException e) {
            return "another process";
        }
    }

    private static StoreException held(Path workspace, String holder) {
        return new StoreException(
                StoreException.Cause.FAULT,
                "workspace " + workspace + ": " + holder
                        + " is writing to it, and one writer at a time is allowed; end that one, or name another file"
                        + " with --workspace (reading is possible meanwhile)");
    }

    @Override
    public void close() {
        closeQuietly(channel);
        HELD.remove(path);
    }

    /** The lock goes with the channel, and a channel that does not close goes with the process. */
    private static void closeQuietly(@Nullable FileChannel channel) {
        try {
            if (channel != null) {
                channel.close();
            }
        } catch (IOException e) {
            // nothing is left to be done
        }
    }
}
