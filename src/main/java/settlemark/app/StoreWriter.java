package settlemark.app;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import settlemark.session.SessionStore;
import settlemark.session.Snapshot;
import settlemark.session.StoreException;
import settlemark.session.WriteBatch;

/**
 * The thread that commits. Reports what is durable after each commit, and what the disk and the log are warned of; after a
 * failure it writes nothing more.
 */
final class StoreWriter {
    private final SessionStore store;
    private final long session;
    private final int probes;
    private final Consumer<List<Long>> afterCommit;
    private final Consumer<String> warned;
    private final Consumer<StoreException> failed;
    private final BlockingQueue<Job> queue = new LinkedBlockingQueue<>();
    private final AtomicInteger waiting = new AtomicInteger();
    private final Thread thread;
    private final long[] totals;
    private Consumer<Snapshot.Stored> durable = stored -> {};
    private Snapshot.Stored last = Snapshot.Stored.NOTHING;
    private volatile @Nullable StoreException failure;

    private record Job(@Nullable WriteBatch batch, Runnable then) {}

    /**
     * @param afterCommit gets the samples stored so far, per probe, on the writer's thread
     * @param warned hears what is about to go wrong whenever that changes, empty once it is over, on the writer's thread
     * @param failed hears once that nothing can be written any more
     */
    StoreWriter(
            SessionStore store,
            long session,
            int probes,
            Consumer<List<Long>> afterCommit,
            Consumer<String> warned,
            Consumer<StoreException> failed) {
        this.store = store;
        this.session = session;
        this.probes = probes;
        this.afterCommit = afterCommit;
        this.warned = warned;
        this.failed = failed;
        this.totals = new long[probes];
        this.thread = new Thread(this::run, "store-writer");
    }

    void start(Consumer<Snapshot.Stored> listener) {
        durable = listener;
        thread.start();
    }

    boolean idle() {
        return waiting.get() == 0;
    }

    /** Writes later, in order; then runs, also where nothing can be written any more: ask {@link #failure}. */
    void write(WriteBatch batch, Runnable then) {
        waiting.incrementAndGet();
        queue.add(new Job(batch, then));
    }

    /** Writes the last batch, marks the session's end and waits. */
    void end(WriteBatch rest) throws InterruptedException {
        write(rest, () -> markEnd(rest.untilNanos()));
        stop();
    }

    /** Writes the last batch of a session that may go on later, and waits. */
    void leave(WriteBatch rest) throws InterruptedException {
        write(rest, () -> {});
        stop();
    }

    private void stop() throws InterruptedException {
        queue.add(new Job(null, () -> {}));
        thread.join();
    }

    private void markEnd(long untilNanos) {
        if (failure != null) {
            return;
        }
        try {
            store.end(session, untilNanos);
        } catch (StoreException e) {
            fail(e);
        }
    }

    /** What ended the writing, null while all is well. */
    @Nullable
    StoreException failure() {
        return failure;
    }

    private void run() {
        try {
            while (true) {
                Job job = queue.take();
                if (job.batch() == null) {
                    return;
                }
                if (failure == null) {
                    write(job.batch());
                }
                job.then().run();
                waiting.decrementAndGet();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void write(WriteBatch batch) {
        try {
            if (!batch.isEmpty()) {
                store.append(session, batch);
            }
            List<Long> stored = new ArrayList<>();
            long all = 0;
            for (int i = 0; i < probes; i++) {
                totals[i] += batch.samplesOf(i);
                all += totals[i];
                stored.add(totals[i]);
            }
            String warning = String.join("; ", store.health().warnings());
            if (!warning.equals(last.warning())) {
                warned.accept(warning);
            }
            last = new Snapshot.Stored(batch.untilNanos(), all, "", warning);
            afterCommit.accept(stored);
            durable.accept(last);
        } catch (StoreException e) {
            fail(e);
        } catch (RuntimeException e) {
            // A fault of the program: whatever it was, nothing more may be called stored.
            fail(new StoreException(StoreException.Cause.FAULT, "a fault of the program stopped the writing: " + e, e));
        }
    }

    private void fail(StoreException e) {
        failure = e;
        durable.accept(
                new Snapshot.Stored(last.untilNanos(), last.samples(), String.valueOf(e.getMessage()), last.warning()));
        failed.accept(e);
    }
}
