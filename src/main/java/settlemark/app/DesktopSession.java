package settlemark.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Supplier;
import settlemark.cli.Program;
import settlemark.job.Act;
import settlemark.job.JobState;
import settlemark.rig.RigHost;
import settlemark.session.LiveSession;
import settlemark.session.ProbeKeys;
import settlemark.session.RecordForm;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;
import settlemark.session.Ticker;
import settlemark.store.SqliteStore;
import settlemark.ui.DesktopHost;
import settlemark.ui.EdtWatch;
import settlemark.ui.Tones;

/** A session that is seen in a window, wherever its bytes come from: the pipeline, its store and its record. */
final class DesktopSession implements DesktopHost {
    private final SqliteStore store;
    private final Path folder;
    private final PrintWriter err;
    private final CountDownLatch closed = new CountDownLatch(1);
    private final long session;
    private final LiveSession live;
    private final Pipeline pipeline;
    private final StoreWriter writer;
    private final Tones tones = new SpeakerTones();
    private final SessionHeader header;
    private final boolean demo;
    private volatile boolean faulty;
    private volatile List<Path> recorded = List.of();

    /**
     * @param folder for the record
     * @param clock what happened to the computer's time since it was last asked
     */
    DesktopSession(
            SessionHeader header,
            SqliteStore store,
            Path folder,
            Ticker ticker,
            Supplier<List<SessionEvent.Clock>> clock,
            PrintWriter err)
            throws StoreException {
        this(new LiveSession(header), store.begin(header), store, folder, ticker, clock, err, onRig(header));
    }

    /**
     * One that is begun already.
     *
     * @param live as it stands
     * @param session its number
     */
    DesktopSession(
            LiveSession live,
            long session,
            SqliteStore store,
            Path folder,
            Ticker ticker,
            Supplier<List<SessionEvent.Clock>> clock,
            PrintWriter err)
            throws StoreException {
        this(live, session, store, folder, ticker, clock, err, false);
    }

    /** @param demo a new job on the rig: closed, it is over, complete or not */
    private DesktopSession(
            LiveSession live,
            long session,
            SqliteStore store,
            Path folder,
            Ticker ticker,
            Supplier<List<SessionEvent.Clock>> clock,
            PrintWriter err,
            boolean demo)
            throws StoreException {
        this.demo = demo;
        this.header = live.header();
        this.store = store;
        this.folder = folder;
        this.err = err;
        this.session = session;
        this.writer = new StoreWriter(
                store,
                session,
                header.probes().size(),
                stored -> {},
                warning -> {},
                e -> err.println("settlemark: " + e.getMessage()));
        this.live = live;
        this.pipeline = new Pipeline(live, ticker, writer, Pipeline.FOR_A_SCREEN, clock, this::broken);
        pipeline.watch(new InstrumentLinks(store.instruments().all(), Map.of(), err::println)::told);
    }

    private static boolean onRig(SessionHeader header) {
        return header.probes().stream().allMatch(p -> p.address().scheme().equals(RigHost.SCHEME));
    }

    SessionHeader header() {
        return header;
    }

    Pipeline pipeline() {
        return pipeline;
    }

    /** Number of the session in its workspace. */
    long number() {
        return session;
    }

    /** Returns when the window was closed. */
    void awaitClosed() throws InterruptedException {
        Thread watch = new Thread(new EdtWatch(err::println), "window-watch");
        watch.setDaemon(true);
        watch.start();
        closed.await();
        watch.interrupt();
    }

    /** Whether the window was closed within this time. */
    boolean isClosedWithin(Duration time) throws InterruptedException {
        return closed.await(time.toMillis(), TimeUnit.MILLISECONDS);
    }

    /** Stores the rest, once the links are closed. A job that is not complete can be gone on with, unless it is sealed. */
    int end() throws InterruptedException {
        boolean complete = pipeline.snapshot().job().map(JobState::complete).orElse(true);
        pipeline.leave(complete || demo || !recorded.isEmpty());
        keepUse();
        seal();
        return writer.failure() == null && !faulty ? Program.DONE : Program.FAULT;
    }

    private void keepUse() {
        try {
            InstrumentLinks.keepUse(store, live);
        } catch (StoreException e) {
            err.println("settlemark: how the instruments were used was not kept: " + e.getMessage());
        }
    }

    /** Not before the session has ended: what is stored after a seal would look like a change. */
    private void seal() {
        if (recorded.isEmpty() || writer.failure() != null) {
            return;
        }
        try {
            err.println("sealed: " + Sealing.seal(store, session, recorded, Instant.now()));
        } catch (IOException | StoreException e) {
            err.println("settlemark: the record is not sealed: " + e.getMessage());
        }
    }

    /** A fault of the program must not look like a quiet gauge: it ends the session, with what was stored kept. */
    private void broken(RuntimeException fault) {
        err.println("settlemark: a fault of the program stopped the session: " + fault);
        fault.printStackTrace(err);
        faulty = true;
        close();
    }

    @Override
    public void makeRecord(Consumer<List<Path>> done, Consumer<String> failed) {
        pipeline.flush(() -> {
            Thread work = new Thread(() -> make(done, failed), "work");
            work.setDaemon(true);
            work.start();
        });
    }

    private void make(Consumer<List<Path>> done, Consumer<String> failed) {
        StoreException broken = writer.failure();
        if (broken != null) {
            failed.accept("the record was not made, since not everything is stored: " + broken.getMessage());
            return;
        }
        try {
            Optional<RecordMaking.Made> made =
                    RecordMaking.make(store, session, ProbeKeys.NONE, Sealing.fingerprint(store, session), folder);
            recorded = made.map(RecordMaking.Made::files).orElse(List.of());
            done.accept(recorded);
        } catch (StoreException | IOException | RuntimeException e) {
            failed.accept("the record was not made: " + e.getMessage());
        }
    }

    @Override
    public void recordForm(Consumer<RecordForm> now) {
        beside(() -> now.accept(RecordForms.of(store.settings())), why -> err.println("settlemark: " + why));
    }

    @Override
    public void keepRecordForm(RecordForm form, Consumer<String> failed) {
        beside(() -> RecordForms.keep(store.settings(), form), failed);
    }

    @Override
    public void instrument(String probe, String serial, Consumer<Act> found, Consumer<String> failed) {
        beside(
                () -> {
                    List<String> said = new ArrayList<>();
                    InstrumentLinks links =
                            new InstrumentLinks(store.instruments().all(), Map.of(probe, serial), said::add);
                    if (links.fit(header)) {
                        links.named(header).forEach(found);
                    }
                    said.forEach(failed);
                },
                failed);
    }

    @FunctionalInterface
    private interface Work {
        void run() throws StoreException;
    }

    private static void beside(Work work, Consumer<String> failed) {
        Thread thread = new Thread(
                () -> {
                    try {
                        work.run();
                    } catch (StoreException e) {
                        failed.accept(String.valueOf(e.getMessage()));
                    }
                },
                "work");
        thread.setDaemon(true);
        thread.start();
    }

    @Override
    public Tones tones() {
        return tones;
    }

    @Override
    public void close() {
        closed.countDown();
    }
}
