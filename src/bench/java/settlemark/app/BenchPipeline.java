package settlemark.app;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import settlemark.session.Bench;
import settlemark.session.BenchView;
import settlemark.session.Desk;
import settlemark.session.LinkListener;
import settlemark.session.LiveSession;
import settlemark.session.ProbeKeys;
import settlemark.session.RawBytes;
import settlemark.session.SessionHeader;
import settlemark.session.Snapshot;
import settlemark.session.StoreException;
import settlemark.store.SqliteStore;

/** The program's own pipeline with its store, as {@code log --window} and a job have it, for benchmarks of the window. */
public final class BenchPipeline implements AutoCloseable {
    private final SystemTicker ticker = new SystemTicker();
    private final SqliteStore store;
    private final Pipeline pipeline;
    private final Bench bench;
    private volatile BenchView view;
    private volatile long publishedNanos;

    /** @param workspace a new file */
    public BenchPipeline(SessionHeader header, Path workspace) throws Exception {
        store = Workspaces.person(Optional.of(workspace));
        bench = new Bench(header);
        LiveSession live = new LiveSession(header, ProbeKeys.NONE);
        live.watchedBy(bench);
        view = bench.view(live.snapshot(header.startedAt()));
        long session = store.begin(header, RawBytes.KEPT);
        StoreWriter writer = new StoreWriter(
                store, session, header.probes().size(), stored -> {}, warned -> {}, BenchPipeline::failed);
        pipeline = new Pipeline(live, ticker, writer, Pipeline.FOR_A_SCREEN, List::of, fault -> failed(fault));
        pipeline.watch(snapshot -> {
            view = bench.view(snapshot);
            publishedNanos = snapshot.timeNanos();
            return List.of();
        });
        pipeline.start();
    }

    private static void failed(Exception e) {
        throw new IllegalStateException(e);
    }

    /** The demo's job, with four channels on four probes. */
    public static SessionHeader job() {
        return DemoScene.header(java.time.Instant.now(), ZoneId.of("UTC"), "bench");
    }

    /** Session time. */
    public long nanos() {
        return ticker.nanos();
    }

    public LinkListener listener(int probe) {
        return pipeline.listener(probe);
    }

    public BenchView view() {
        return view;
    }

    /** Session time up to which the newest view holds everything. */
    public long publishedNanos() {
        return publishedNanos;
    }

    public Desk desk() {
        return pipeline;
    }

    /** The newest snapshot. */
    public Snapshot snapshot() {
        return pipeline.snapshot();
    }

    @Override
    public void close() throws StoreException {
        try {
            pipeline.end();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            store.close();
        }
    }
}
