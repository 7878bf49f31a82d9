package settlemark.link;

import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.locks.LockSupport;
import settlemark.session.LinkException;

/**
 * The other end of a serial link: a tty that speaks the bytes it is given, for simulated instruments. One thread writes;
 * any may close. Settings are 115200 baud, 8N1, which a pseudo terminal ignores.
 */
public final class SerialFarEnd implements AutoCloseable {
    private static final Duration CLOSE_LIMIT = Duration.ofSeconds(2);

    /** Closing a tty drops what nobody has fetched yet, and a pseudo terminal does not say how much that is. */
    private static final int LINGER = 10;

    private static final int LINGER_LIMIT = 80;
    private static final long LINGER_STEP_NANOS = 10_000_000;

    private final String path;
    private final Tty tty;
    private final TimedWriter writer;
    private final ThreadFactory threads;
    private final Duration patience;
    private boolean closed;

    private SerialFarEnd(String path, Tty tty, ThreadFactory threads, Duration patience) {
        this.path = path;
        this.tty = tty;
        this.threads = threads;
        this.patience = patience;
        this.writer = new TimedWriter(tty, "link-out-" + Path.of(path).getFileName(), threads);
    }

    /**
     * Opens a tty.
     *
     * @param path such as {@code /dev/pts/3}, or a link to it
     * @param threads makes the threads that write and close
     * @param patience how long a write waits for the other side to take the bytes
     * @throws LinkException with the remedy, where there is no such tty, it is taken or may not be used
     */
    public static SerialFarEnd open(String path, ThreadFactory threads, Duration patience) throws LinkException {
        return open(path, threads, patience, new NativeTtys());
    }

    static SerialFarEnd open(String path, ThreadFactory threads, Duration patience, TtyOpener opener)
            throws LinkException {
        Path node = new DeviceNodes(Path.of("/dev")).resolve(path);
        return new SerialFarEnd(path, opener.open(node, LineSettings.DEFAULT), threads, patience);
    }

    /**
     * Speaks.
     *
     * @return false where nobody took all of it in time: the rest is dropped, and with it what waited in the port, as a
     *     gauge's bytes are lost when nobody listens
     * @throws LinkException where the tty is gone or closed
     */
    public boolean write(byte[] bytes) throws LinkException {
        return switch (writer.write(bytes, patience)) {
            case TAKEN -> true;
            case DROPPED -> false;
            case GONE ->
                throw new LinkException(
                        path + " takes no more bytes: its other end was closed. Start the other end again, then this");
        };
    }

    /**
     * Waits up to a tenth of a second for what the other end says.
     *
     * @return how many bytes came, 0 for none
     * @throws LinkException where the tty is gone or closed
     */
    public int read(byte[] buffer) throws LinkException {
        int count = tty.read(buffer);
        if (count < 0) {
            throw new LinkException(path + " is gone: its other end was closed. Start the other end again, then this");
        }
        return count;
    }

    /** Gives the other end a moment to fetch what was written, then closes; within three seconds. */
    @Override
    public void close() {
        synchronized (this) {
            if (closed) {
                return;
            }
            closed = true;
        }
        linger();
        Aside.run(this::closeNow, CLOSE_LIMIT, threads);
    }

    private void closeNow() {
        writer.shutdown();
        tty.close();
    }

    private void linger() {
        for (int waited = 0; waited < LINGER_LIMIT; waited++) {
            if (waited >= LINGER && tty.awaitingWrite() == 0
                    || Thread.currentThread().isInterrupted()) {
                return;
            }
            LockSupport.parkNanos(this, LINGER_STEP_NANOS);
        }
    }
}
