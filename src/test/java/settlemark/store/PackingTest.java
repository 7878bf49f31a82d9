package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.ConcurrentLinkedDeque;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.session.CheckReport;
import settlemark.session.SampleBlock;
import settlemark.session.SessionEvent;
import settlemark.session.StoreException;

/** Blocks are packed on another thread while commits go on: nobody may notice anything of it but the speed. */
final class PackingTest {
    /** Seconds of a batch: with the fourth there are enough events for a block, with the ninth enough samples. */
    private static final int SECONDS = 50;

    @TempDir
    Path folder;

    private final Deque<Runnable> waiting = new ConcurrentLinkedDeque<>();

    private Path file() {
        return folder.resolve("w.settlemark");
    }

    private long blocks() throws Exception {
        return Workspace.number(
                file(), "SELECT (SELECT count(*) FROM sample_block) + (SELECT count(*) FROM event_block)");
    }

    private static void assertHolds(SqliteStore store, long session, int seconds) throws StoreException {
        List<SessionEvent> events = new ArrayList<>();
        store.events(session, events::add);
        assertThat(events).isEqualTo(Workspace.minute(0, seconds).events());
        for (int probe = 0; probe < 2; probe++) {
            SampleBlock samples = store.samples(session, probe, 1, 0, Long.MAX_VALUE);
            assertThat(samples.size()).isEqualTo(10 * seconds);
            for (int i = 0; i < samples.size(); i++) {
                assertThat(samples.timesNanos()[i]).isEqualTo(Fixtures.time(i / 10, i % 10));
                assertThat(samples.values()[i]).isEqualTo(Fixtures.value(probe, 1, i));
            }
            assertThat(store.last(session, probe, 1).timesNanos()).containsExactly(Fixtures.time(seconds - 1, 9));
        }
    }

    private CheckReport check() throws StoreException {
        return new WorkspaceTools(Fixtures::profile).check(file());
    }

    @Test
    void allIsThereAtAnyMomentWhenBlocksAreReadyLater() throws Exception {
        int batches = 40;
        try (SqliteStore store = Fixtures.open(file(), waiting::add)) {
            long session = store.begin(Fixtures.log("log"));
            for (int n = 0; n < batches; n++) {
                store.append(session, Workspace.minute(n * SECONDS, SECONDS));
                assertHolds(store, session, (n + 1) * SECONDS);
                // Packed before the next commit, at latest: one that fills a block again would wait for it for ever.
                while (!waiting.isEmpty()) {
                    waiting.remove().run();
                }
            }
            assertThat(blocks()).isPositive();
            assertThat(check().damage()).isEmpty();
            waiting.forEach(Runnable::run);
            store.end(session, batches * SECONDS * Fixtures.SECOND);
            assertHolds(store, session, batches * SECONDS);
        }
        assertThat(Workspace.number(file(), "SELECT count(*) FROM frame")).isEqualTo(1);
        assertThat(check().damage()).isEmpty();
        assertThat(check().contents().samples()).isEqualTo(40L * batches * SECONDS);
    }

    @Test
    void whatWasBeingPackedWhenTheWorkspaceClosedIsPackedByTheNextWriter() throws Exception {
        try (SqliteStore store = Fixtures.open(file(), waiting::add)) {
            long session = store.begin(Fixtures.log("log"));
            for (int n = 0; n < 6; n++) {
                store.append(session, Workspace.minute(n * SECONDS, SECONDS));
            }
            assertThat(waiting).hasSize(1);
        }
        assertThat(blocks()).isZero();
        try (SqliteStore store = Fixtures.open(file())) {
            assertHolds(store, 1, 6 * SECONDS);
            store.append(1, Workspace.minute(6 * SECONDS, SECONDS));
            assertThat(blocks()).isPositive();
            assertHolds(store, 1, 7 * SECONDS);
        }
        assertThat(check().damage()).isEmpty();
    }

    @Test
    void aWriterThatIsAWholeBlockAheadWaits() throws Exception {
        ExecutorService other = Executors.newSingleThreadExecutor();
        AtomicReference<Thread> writer = new AtomicReference<>();
        try (SqliteStore store = Fixtures.open(file(), waiting::add)) {
            long session = store.begin(Fixtures.log("log"));
            int batches = 0;
            while (waiting.isEmpty()) {
                store.append(session, Workspace.minute(SECONDS * batches++, SECONDS));
            }
            int from = batches;
            Future<?> more = other.submit(() -> {
                writer.set(Thread.currentThread());
                for (int n = from; n < from + 12; n++) {
                    store.append(session, Workspace.minute(n * SECONDS, SECONDS));
                }
                return null;
            });
            Runnable first = waiting.remove();
            while (!isWaiting(writer.get())) {
                Thread.onSpinWait();
            }
            assertThat(blocks()).isZero();
            assertThat(more.isDone()).isFalse();
            first.run();
            // The writer may look as if it waited for a moment yet.
            while (blocks() == 0 && !more.isDone()) {
                Thread.onSpinWait();
            }
            assertThat(blocks()).isPositive();
            while (!more.isDone()) {
                Runnable next = waiting.poll();
                if (next != null) {
                    next.run();
                }
            }
            more.get();
            assertHolds(store, session, (from + 12) * SECONDS);
        } finally {
            other.shutdownNow();
        }
    }

    private static boolean isWaiting(@Nullable Thread thread) {
        return thread != null && thread.getState() == Thread.State.WAITING;
    }

    @Test
    void packingThatFailsUndoesTheCommitWhichMayBeTriedAgain() throws Exception {
        boolean[] refuses = {false};
        try (SqliteStore store = Fixtures.open(file(), task -> {
            if (refuses[0]) {
                throw new RejectedExecutionException("nobody is there to pack");
            }
            task.run();
        })) {
            long session = store.begin(Fixtures.log("log"));
            int n = 0;
            while (blocks() == 0) {
                store.append(session, Workspace.minute(SECONDS * n++, SECONDS));
            }
            refuses[0] = true;
            int held = n;
            assertThatThrownBy(() -> {
                        for (int i = held; i < held + 20; i++) {
                            store.append(session, Workspace.minute(i * SECONDS, SECONDS));
                        }
                    })
                    .isInstanceOf(RejectedExecutionException.class);
            refuses[0] = false;
            int batches = Math.toIntExact(store.sampleCount(session, 0) / 20 / SECONDS);
            assertThat(batches).isBetween(held, held + 19);
            assertHolds(store, session, batches * SECONDS);
            store.append(session, Workspace.minute(batches * SECONDS, SECONDS));
            assertHolds(store, session, (batches + 1) * SECONDS);
        }
        assertThat(check().damage()).isEmpty();
    }
}
