package settlemark.app;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import settlemark.job.Act;
import settlemark.session.JobFloor;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.LinkListener;
import settlemark.session.LiveSession;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeLink;
import settlemark.session.ProbeSetup;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.Snapshot;
import settlemark.session.StoreException;

/** A job on real probes without a window: the links of {@code log}, in the pipeline and store of every session. */
final class ProbeFloor implements JobFloor, AutoCloseable {
    private static final long PAUSE_MILLIS = 100;

    private final List<ProbeLink> links = new ArrayList<>();
    private final List<LateListener> listeners = new ArrayList<>();
    private final LaterTicker ticker;
    private final PrintWriter err;
    private @Nullable Pipeline pipeline;
    private @Nullable StoreWriter writer;
    private @Nullable SleepGuard guard;
    private volatile @Nullable RuntimeException fault;

    /** Opens the links of all probes, or none: a port that cannot be opened must not leave an empty session behind. */
    ProbeFloor(SessionHeader header, Hosts hosts, LaterTicker ticker, PrintWriter err) throws LinkException {
        this.ticker = ticker;
        this.err = err;
        try {
            for (ProbeSetup probe : header.probes()) {
                LateListener listener = new LateListener(probe.name(), this::say);
                listeners.add(listener);
                if (probe.address().scheme().equals(ProbeAddress.BLE)) {
                    say(probe.name() + ": looking for " + probe.address().words());
                }
                links.add(hosts.of(probe.address()).open(probe.address(), probe.profile(), ticker, listener));
            }
        } catch (LinkException | RuntimeException e) {
            close();
            throw e;
        }
    }

    private void say(String words) {
        err.println(words);
        err.flush();
    }

    /** The session that the links' bytes go into from now on. */
    void begin(LiveSession session, SessionStore store, long number, InstrumentLinks instruments) {
        int probes = session.header().probes().size();
        writer = new StoreWriter(
                store, number, probes, stored -> {}, this::warn, e -> say("settlemark: " + e.getMessage()));
        pipeline =
                new Pipeline(session, ticker, writer, Pipeline.FOR_A_SCREEN, ticker::events, broken -> fault = broken);
        pipeline.watch(instruments::told);
        pipeline.start();
        for (int i = 0; i < listeners.size(); i++) {
            LinkListener listener = pipeline.listener(i);
            if (ticker.isLater()) {
                listener.changed(ticker.nanos(), LinkChange.UP, "connected again");
            }
            listeners.get(i).connect(listener);
        }
        guard = SleepGuard.hold("doing a job", this::say);
    }

    private void warn(String warning) {
        say(warning.isEmpty() ? "the disk is as it should be again" : "warning: " + warning);
    }

    private Pipeline pipeline() {
        if (pipeline == null) {
            throw new IllegalStateException("the session has not begun");
        }
        return pipeline;
    }

    @Override
    public Snapshot snapshot() {
        return pipeline().snapshot();
    }

    @Override
    public void act(Act act) {
        pipeline().act(act);
    }

    @Override
    public void pass() throws StoreException, InterruptedException {
        Thread.sleep(PAUSE_MILLIS);
        if (fault != null) {
            throw new IllegalStateException("a fault of the program stopped the job", fault);
        }
        if (writer != null && writer.failure() != null) {
            throw writer.failure();
        }
    }

    @Override
    public boolean handsAreSimulated() {
        return false;
    }

    @Override
    public void handsAtWork(boolean atWork) {
        // The hands are the person's.
    }

    /** Closes the links and stores the rest; the session can be taken up again unless its end is marked. */
    void leave(boolean ended) throws InterruptedException {
        links.forEach(ProbeLink::close);
        if (pipeline != null) {
            pipeline.leave(ended);
            pipeline = null;
        }
    }

    @Override
    public void close() {
        links.forEach(ProbeLink::close);
        if (guard != null) {
            guard.close();
        }
    }
}
