package settlemark.app;

import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import settlemark.job.Act;
import settlemark.measure.Chunk;
import settlemark.session.Desk;
import settlemark.session.LinkChange;
import settlemark.session.LinkListener;
import settlemark.session.LiveSession;
import settlemark.session.SessionEvent;
import settlemark.session.Snapshot;
import settlemark.session.Ticker;
import settlemark.session.WriteBatch;

/**
 * A running session: one thread takes events from the queue into the {@link LiveSession} and publishes snapshots, another
 * commits what came. Links, windows and commands only offer events.
 *
 * <p>The raw queue is bounded: bytes that do not fit are counted and the probe is told to have been overrun, so that no
 * reading is taken across them. A store that cannot write stops the session loudly.
 */
final class Pipeline implements Desk {
    private static final int QUEUE = 20_000;
    /** As often as a screen looks. */
    static final Duration FOR_A_SCREEN = Duration.ofMillis(100);
    /** Where nobody looks, snapshots only keep the session's time going. */
    static final Duration FOR_NOBODY = Duration.ofSeconds(5);

    private static final long PAUSE_NANOS = 50_000_000;
    private static final long COMMIT_NANOS = 800_000_000;
    private static final long CLOCK_NANOS = 1_000_000_000;

    private final LiveSession session;
    private final Ticker ticker;
    private final StoreWriter writer;
    private final BlockingQueue<Object> queue = new LinkedBlockingQueue<>(QUEUE);
    /** Probes whose bytes did not fit since the last look. */
    private final Set<Integer> overrun = ConcurrentHashMap.newKeySet();

    private final Thread thread;
    private final Supplier<List<SessionEvent.Clock>> clock;
    private final Consumer<RuntimeException> broken;
    private final SnapshotTurns turns;
    private volatile Snapshot snapshot;
    private volatile boolean ending;
    private Function<Snapshot, List<Act>> watch = now -> List.of();
    private long commitAt;
    private long clockAt;

    /** Asks for everything that came before it to be durable; then runs. */
    private record Flush(Runnable then) {}

    private record Committed(Snapshot.Stored stored) {}

    /**
     * @param every how often a snapshot is published
     * @param clock what happened to the computer's time since it was last asked
     * @param broken hears of a fault of the program, which ends the pipeline
     */
    Pipeline(
            LiveSession session,
            Ticker ticker,
            StoreWriter writer,
            Duration every,
            Supplier<List<SessionEvent.Clock>> clock,
            Consumer<RuntimeException> broken) {
        this.session = session;
        this.ticker = ticker;
        this.writer = writer;
        this.turns = new SnapshotTurns(every.toNanos(), System.nanoTime());
        this.clock = clock;
        this.broken = broken;
        this.snapshot = session.snapshot(ticker.wall());
        this.thread = new Thread(this::run, "pipeline");
    }

    /** Before the start: what is to be reported by itself when a snapshot shows it. */
    void watch(Function<Snapshot, List<Act>> reported) {
        watch = reported;
    }

    void start() {
        writer.start(stored -> offerControl(new Committed(stored)));
        thread.start();
    }

    @Override
    public Snapshot snapshot() {
        return snapshot;
    }

    @Override
    public void act(Act act) {
        offerControl(new SessionEvent.Done(ticker.nanos(), act));
    }

    /** Runs after everything offered so far is durable, on the writer's thread. */
    void flush(Runnable then) {
        offerControl(new Flush(then));
    }

    /** The listener of a probe. */
    LinkListener listener(int probe) {
        return new LinkListener() {
            @Override
            public void arrived(Chunk chunk) {
                if (!queue.offer(new SessionEvent.Bytes(probe, chunk))) {
                    overrun.add(probe);
                }
            }

            @Override
            public void changed(long timeNanos, LinkChange change, String words) {
                offerControl(new SessionEvent.Link(probe, timeNanos, change, words));
            }
        };
    }

    /** Acts and link changes are few and must not be lost: they wait a moment for room. */
    private void offerControl(Object event) {
        try {
            queue.offer(event, 2, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Takes in what was offered, commits it and ends; waits for both threads. */
    void end() throws InterruptedException {
        leave(true);
    }

    /** The same; the session's end is marked only where it has ended, else it can go on later. */
    void leave(boolean ended) throws InterruptedException {
        ending = true;
        thread.join();
        if (ended) {
            writer.end(session.drain());
        } else {
            writer.leave(session.drain());
        }
    }

    private void run() {
        try {
            while (true) {
                Object event = queue.poll(pauseNanos(), TimeUnit.NANOSECONDS);
                if (event != null) {
                    take(event);
                } else if (ending) {
                    return;
                }
                whatIsDue(System.nanoTime(), event == null);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (RuntimeException e) {
            broken.accept(e);
        }
    }

    private long pauseNanos() {
        return Math.min(PAUSE_NANOS, turns.pauseNanos(System.nanoTime()));
    }

    private void whatIsDue(long realNanos, boolean quiet) {
        overrun.removeIf(this::tellOverrun);
        if (realNanos - clockAt >= CLOCK_NANOS) {
            clockAt = realNanos;
            clock.get().forEach(session::take);
        }
        if (realNanos - commitAt >= COMMIT_NANOS && writer.idle()) {
            commitAt = realNanos;
            commit();
        }
        if (turns.due(realNanos, quiet)) {
            session.passTo(ticker.nanos());
            snapshot = session.snapshot(ticker.wall());
            watch.apply(snapshot).forEach(act -> session.take(new SessionEvent.Done(ticker.nanos(), act)));
        }
    }

    private void take(Object event) {
        turns.news(System.nanoTime());
        if (event instanceof SessionEvent happened) {
            session.take(happened);
        } else if (event instanceof Committed committed) {
            session.stored(committed.stored());
        } else if (event instanceof Flush flush) {
            writer.write(session.drain(), flush.then());
        }
    }

    private boolean tellOverrun(int probe) {
        session.take(new SessionEvent.Link(
                probe, ticker.nanos(), LinkChange.OVERRUN, "bytes were dropped: the computer could not keep up"));
        return true;
    }

    private void commit() {
        WriteBatch batch = session.drain();
        if (!batch.isEmpty()) {
            writer.write(batch, () -> {});
        }
    }
}
