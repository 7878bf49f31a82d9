package settlemark.app;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import settlemark.job.JobState;
import settlemark.measure.Chunk;
import settlemark.rig.DemoRig;
import settlemark.rig.RigHost;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.LinkListener;
import settlemark.session.ProbeKeys;
import settlemark.session.ProbeLink;
import settlemark.session.ProbeSetup;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;
import settlemark.session.TakenUp;
import settlemark.store.SqliteStore;
import settlemark.ui.DesktopStart;

/** The demo in its window: the rig runs in real time or a multiple of it, and the person does the job. */
final class DesktopDemo {
    private static final Duration RIG_PAUSE = Duration.ofMillis(20);

    private final DemoRig rig;
    private final DemoTicker ticker;
    private final DesktopSession session;
    /** Session time at the rig's start: the rig's own begins at 0 each time. */
    private final long fromNanos;

    /**
     * A job on the rig that was left: the same session, its gap marked, the screws where it has left them. What was planted in
     * the rig is not known any more; it goes on healthy.
     */
    private DesktopDemo(TakenUp taken, long number, SqliteStore store, Path folder, DemoRig rig, PrintWriter err)
            throws StoreException {
        this.rig = rig;
        this.fromNanos = taken.fromNanos();
        this.ticker = new DemoTicker(taken.session().header().startedAt(), fromNanos, 1);
        this.session = new DesktopSession(taken.session(), number, store, folder, ticker, List::of, err);
    }

    /** Takes a job on the rig up again. */
    static DesktopDemo resume(long number, SqliteStore store, Optional<Path> folder, PrintWriter err)
            throws StoreException {
        TakenUp taken = TakenUp.of(store, number, ProbeKeys.NONE, Instant.now());
        JobState job = taken.session().job().orElseThrow();
        DemoRig rig = new DemoRig(new DemoRig.Settings(number, true, Set.of(), DemoScene.appliance(job.plan())));
        RigAsLeft.stands(rig, job);
        store.reopen(number);
        return new DesktopDemo(taken, number, store, Workspaces.records(store, folder), rig, err);
    }

    DesktopDemo(SessionHeader header, SqliteStore store, Path folder, DemoRig.Settings rig, int speed, PrintWriter err)
            throws StoreException {
        this.rig = new DemoRig(rig);
        this.fromNanos = 0;
        this.ticker = new DemoTicker(header.startedAt(), fromNanos, speed);
        this.session = new DesktopSession(header, store, folder, ticker, List::of, err);
    }

    /** Opens the window and returns when it was closed and everything is stored. */
    int run(DesktopStart start) throws LinkException, InterruptedException {
        Pipeline pipeline = session.pipeline();
        pipeline.start();
        List<ProbeLink> links = new ArrayList<>();
        RigHost host = new RigHost(rig);
        List<ProbeSetup> probes = session.header().probes();
        for (int i = 0; i < probes.size(); i++) {
            ProbeSetup probe = probes.get(i);
            links.add(host.open(probe.address(), probe.profile(), ticker, later(pipeline.listener(i))));
        }
        Thread rigThread = new Thread(this::turnTheRig, "link-rig");
        rigThread.setDaemon(true);
        rigThread.start();
        start.open(pipeline, Optional.of(rig), Optional.of(ticker), session);
        session.awaitClosed();
        rigThread.interrupt();
        links.forEach(ProbeLink::close);
        return session.end();
    }

    private LinkListener later(LinkListener listener) {
        return new LinkListener() {
            @Override
            public void arrived(Chunk chunk) {
                listener.arrived(new Chunk(chunk.timeNanos() + fromNanos, chunk.bytes()));
            }

            @Override
            public void changed(long timeNanos, LinkChange change, String words) {
                listener.changed(timeNanos, change, words);
            }
        };
    }

    private void turnTheRig() {
        try {
            while (!session.isClosedWithin(RIG_PAUSE)) {
                rig.advanceTo(ticker.nanos() - fromNanos);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
