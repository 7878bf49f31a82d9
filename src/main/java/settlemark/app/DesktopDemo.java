package settlemark.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import settlemark.cli.Program;
import settlemark.rig.DemoRig;
import settlemark.rig.RigHost;
import settlemark.session.LinkException;
import settlemark.session.LiveSession;
import settlemark.session.ProbeLink;
import settlemark.session.ProbeSetup;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;
import settlemark.store.SqliteStore;
import settlemark.ui.DesktopHost;
import settlemark.ui.DesktopStart;
import settlemark.ui.EdtWatch;

/** The demo in its window: the rig runs in real time or a multiple of it, and the person does the job. */
final class DesktopDemo implements DesktopHost {
    private static final long RIG_PAUSE_MILLIS = 20;

    private final SqliteStore store;
    private final Path folder;
    private final PrintWriter err;
    private final CountDownLatch closed = new CountDownLatch(1);
    private final DemoRig rig;
    private final DemoTicker ticker;
    private final long session;
    private final Pipeline pipeline;
    private final StoreWriter writer;
    private final SessionHeader header;
    private volatile boolean faulty;

    DesktopDemo(SessionHeader header, SqliteStore store, Path folder, long seed, int speed, PrintWriter err)
            throws StoreException {
        this.header = header;
        this.store = store;
        this.folder = folder;
        this.err = err;
        this.rig = new DemoRig(new DemoRig.Settings(seed, true));
        this.ticker = new DemoTicker(header.startedAt(), speed);
        this.session = store.begin(header);
        this.writer = new StoreWriter(
                store,
                session,
                header.probes().size(),
                stored -> {},
                warning -> {},
                e -> err.println("settlemark: " + e.getMessage()));
        this.pipeline =
                new Pipeline(new LiveSession(header), ticker, writer, Pipeline.FOR_A_SCREEN, List::of, this::broken);
    }

    /** Opens the window and returns when it was closed and everything is stored. */
    int run(DesktopStart start) throws LinkException, InterruptedException {
        pipeline.start();
        List<ProbeLink> links = new ArrayList<>();
        RigHost host = new RigHost(rig);
        for (int i = 0; i < header.probes().size(); i++) {
            ProbeSetup probe = header.probes().get(i);
            links.add(host.open(probe.address(), probe.profile(), ticker, pipeline.listener(i)));
        }
        Thread rigThread = new Thread(this::turnTheRig, "link-rig");
        rigThread.setDaemon(true);
        rigThread.start();
        start.open(pipeline, Optional.of(rig), Optional.of(ticker), this);
        Thread watch = new Thread(new EdtWatch(err::println), "window-watch");
        watch.setDaemon(true);
        watch.start();
        closed.await();
        watch.interrupt();
        rigThread.interrupt();
        links.forEach(ProbeLink::close);
        pipeline.end();
        return writer.failure() == null && !faulty ? Program.DONE : Program.FAULT;
    }

    private void turnTheRig() {
        try {
            while (!closed.await(RIG_PAUSE_MILLIS, TimeUnit.MILLISECONDS)) {
                rig.advanceTo(ticker.nanos());
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** A fault of the program must not look like a quiet gauge: it ends the demo, with what was stored kept. */
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
            Optional<RecordMaking.Made> made = RecordMaking.make(store, session, folder);
            done.accept(made.map(RecordMaking.Made::files).orElse(List.of()));
        } catch (StoreException | IOException | RuntimeException e) {
            failed.accept("the record was not made: " + e.getMessage());
        }
    }

    @Override
    public void close() {
        closed.countDown();
    }
}
