package settlemark.app;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import settlemark.rig.DemoRig;
import settlemark.rig.RigHost;
import settlemark.session.LinkException;
import settlemark.session.ProbeLink;
import settlemark.session.ProbeSetup;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;
import settlemark.store.SqliteStore;
import settlemark.ui.DesktopStart;

/** The demo in its window: the rig runs in real time or a multiple of it, and the person does the job. */
final class DesktopDemo {
    private static final Duration RIG_PAUSE = Duration.ofMillis(20);

    private final DemoRig rig;
    private final DemoTicker ticker;
    private final DesktopSession session;

    DesktopDemo(SessionHeader header, SqliteStore store, Path folder, DemoRig.Settings rig, int speed, PrintWriter err)
            throws StoreException {
        this.rig = new DemoRig(rig);
        this.ticker = new DemoTicker(header.startedAt(), speed);
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
            links.add(host.open(probe.address(), probe.profile(), ticker, pipeline.listener(i)));
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

    private void turnTheRig() {
        try {
            while (!session.isClosedWithin(RIG_PAUSE)) {
                rig.advanceTo(ticker.nanos());
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
