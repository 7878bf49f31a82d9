package settlemark.link;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * Writes to a device that may take no bytes for ever. The system's write blocks, so it runs beside the caller, who waits
 * for a limited time; then what waits in the port is dropped and the write with it.
 */
final class TimedWriter {
    /** How much is handed over at once: little enough that dropping what waits always lets one such write end. */
    private static final int PIECE_BYTES = 512;

    private static final Duration RELEASE_LIMIT = Duration.ofMillis(500);

    enum Outcome {
        TAKEN,
        /** Not all of it was taken in time; what waited in the port is dropped. */
        DROPPED,
        /** The device failed, or the writer is shut down. */
        GONE
    }

    private final Tty tty;
    private final ThreadFactory threads;
    private final ThreadPoolExecutor worker;
    private volatile Future<Outcome> last = CompletableFuture.completedFuture(Outcome.TAKEN);
    private volatile boolean givenUp;

    TimedWriter(Tty tty, String name, ThreadFactory threads) {
        this.tty = tty;
        this.threads = threads;
        this.worker = new ThreadPoolExecutor(0, 1, 5, TimeUnit.SECONDS, new LinkedBlockingQueue<>(), task -> {
            Thread thread = threads.newThread(task);
            thread.setName(name);
            return thread;
        });
    }

    /** Blocks for the patience and a second at most. */
    synchronized Outcome write(byte[] bytes, Duration patience) {
        if (worker.isShutdown() || !last.isDone()) {
            return Outcome.GONE;
        }
        givenUp = false;
        last = worker.submit(() -> push(bytes));
        return outcome(patience).orElseGet(this::giveUp);
    }

    /** Lets a blocked write end and touches the device only then; later writes do nothing. */
    void shutdown() {
        worker.shutdown();
        if (!last.isDone()) {
            givenUp = true;
            tty.release();
        }
    }

    private Outcome giveUp() {
        givenUp = true;
        Aside.run(tty::release, RELEASE_LIMIT, threads);
        Outcome late = outcome(RELEASE_LIMIT).orElse(Outcome.GONE);
        return late == Outcome.GONE ? Outcome.GONE : Outcome.DROPPED;
    }

    private Optional<Outcome> outcome(Duration patience) {
        try {
            return Optional.of(last.get(patience.toNanos(), TimeUnit.NANOSECONDS));
        } catch (TimeoutException e) {
            return Optional.empty();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return Optional.empty();
        } catch (ExecutionException e) {
            throw new IllegalStateException(e.getCause());
        }
    }

    private Outcome push(byte[] bytes) {
        for (int from = 0; from < bytes.length; from += PIECE_BYTES) {
            int length = Math.min(PIECE_BYTES, bytes.length - from);
            if (givenUp) {
                return Outcome.DROPPED;
            }
            if (tty.write(bytes, from, length) < length) {
                return Outcome.GONE;
            }
        }
        return Outcome.TAKEN;
    }
}
