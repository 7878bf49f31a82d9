package settlemark.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Optional;
import java.util.function.Supplier;
import settlemark.ui.ScreenState;

/**
 * Keeps how an open window looks and what is typed in it in a file beside its workspace, so that a program that was cut off
 * begins again where it stood. The file is no part of the workspace, which another thread may be writing; it goes when the
 * window is closed in order.
 */
final class ScreenKeeper implements AutoCloseable {
    private static final long PAUSE_MILLIS = 1000;

    private final Supplier<ScreenState> state;
    private final Path file;
    private final PrintWriter err;
    private volatile boolean open = true;
    private ScreenState kept = ScreenState.NONE;
    private boolean failed;

    /**
     * Begins to look, once a second.
     *
     * @param state how the window looks now; may wait for the event thread
     * @param workspace that the window was opened on, whether or not it is there
     */
    ScreenKeeper(Supplier<ScreenState> state, Path workspace, PrintWriter err) {
        this.state = state;
        this.file = file(workspace);
        this.err = err;
        Thread thread = new Thread(this::run, "work");
        thread.setDaemon(true);
        thread.start();
    }

    private static Path file(Path workspace) {
        return workspace.toAbsolutePath().resolveSibling(workspace.getFileName() + ".screen");
    }

    /** What a program that was cut off has left; empty where none was. */
    static Optional<ScreenState> left(Path workspace) {
        try {
            return Files.exists(file(workspace))
                    ? Optional.of(KeptScreen.read(Files.readString(file(workspace))))
                    : Optional.empty();
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    private void run() {
        try {
            while (open) {
                Thread.sleep(PAUSE_MILLIS);
                keepNow();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Keeps what has changed; that it cannot is said once, and the window goes on. */
    synchronized void keepNow() {
        ScreenState now = state.get();
        if (!open || now.equals(kept)) {
            return;
        }
        try {
            Files.createDirectories(file.getParent());
            Path whole = file.resolveSibling(file.getFileName() + ".new");
            Files.write(whole, KeptScreen.text(now).getBytes(StandardCharsets.UTF_8));
            Files.move(whole, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            kept = now;
        } catch (IOException e) {
            if (!failed) {
                err.println("settlemark: what is typed is not kept for a restart: " + e.getMessage());
            }
            failed = true;
        }
    }

    /** The window was closed in order: whatever is to stay is kept elsewhere. */
    @Override
    public synchronized void close() {
        open = false;
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            err.println("settlemark: " + file + " cannot be removed: " + e.getMessage());
        }
    }
}
