package settlemark.app;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Keeps the computer awake while a log runs, also with its lid closed, until it is closed or the program dies.
 *
 * <p>A child process holds systemd-logind's lock: {@code systemd-inhibit} runs {@code cat}, which ends when our end of
 * its input goes, whatever ends us. A lock for idle alone would not do: on many laptops the lid is what sends them to
 * sleep.
 */
public final class SleepGuard implements AutoCloseable {
    private static final String WHAT = "sleep:idle:handle-lid-switch";
    private static final long END_LIMIT_MILLIS = 1000;

    /** Set by the first of a close and a warning; the other then has nothing to say. */
    private final AtomicBoolean over = new AtomicBoolean();

    private final @Nullable Process holder;

    private SleepGuard(String program, String why, Consumer<String> warn) {
        holder = start(program, why, warn);
    }

    /**
     * Begins to keep awake. Does not wait for the lock; where it is refused, that is said later.
     *
     * @param why for whoever asks what keeps the computer awake, such as {@code logging a gauge}
     * @param warn hears at most one sentence, from any thread, where the computer may sleep all the same
     */
    public static SleepGuard hold(String why, Consumer<String> warn) {
        return hold("systemd-inhibit", why, warn);
    }

    static SleepGuard hold(String program, String why, Consumer<String> warn) {
        return new SleepGuard(program, why, warn);
    }

    private @Nullable Process start(String program, String why, Consumer<String> warn) {
        try {
            Process process = new ProcessBuilder(
                            program, "--what=" + WHAT, "--mode=block", "--who=Settlemark", "--why=" + why, "cat")
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            process.onExit().thenAccept(ended -> warnOnce(warn, "it said \"" + said(ended) + "\""));
            return process;
        } catch (IOException e) {
            warnOnce(warn, program + " is missing");
            return null;
        }
    }

    private void warnOnce(Consumer<String> warn, String because) {
        if (over.compareAndSet(false, true)) {
            warn.accept("the computer may go to sleep while it logs, because the lock against it was not given ("
                    + because + "): set it to stay awake, also with its lid closed");
        }
    }

    /** Lets the computer sleep again; within two seconds. */
    @Override
    public void close() {
        over.set(true);
        if (holder == null) {
            return;
        }
        try {
            holder.getOutputStream().close();
            if (!holder.waitFor(END_LIMIT_MILLIS, TimeUnit.MILLISECONDS)) {
                holder.destroy();
            }
        } catch (IOException e) {
            holder.destroy();
        } catch (InterruptedException e) {
            holder.destroy();
            Thread.currentThread().interrupt();
        }
    }

    /** The first line of its complaint. */
    private static String said(Process ended) {
        try (BufferedReader errors = ended.errorReader(StandardCharsets.UTF_8)) {
            String line = errors.readLine();
            return line == null ? "nothing, and ended with " + ended.exitValue() : line.strip();
        } catch (IOException e) {
            return "nothing";
        }
    }
}
