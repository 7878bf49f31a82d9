package settlemark.app;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import settlemark.job.Act;
import settlemark.job.JobState;
import settlemark.measure.Chunk;
import settlemark.rig.DemoRig;
import settlemark.rig.DemoTechnician;
import settlemark.rig.RigHost;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.LinkListener;
import settlemark.session.LiveSession;
import settlemark.session.ProbeLink;
import settlemark.session.ProbeSetup;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.Snapshot;
import settlemark.session.StoreException;
import settlemark.session.Ticker;

/** The demo's job without a window, as fast as the computer goes: the same pipeline, on the rig's own time. */
final class HeadlessDemo {
    private static final long STEP_NANOS = 200_000_000;
    private static final long COMMIT_NANOS = 10_000_000_000L;
    private static final long LONGEST_NANOS = 4 * 3_600_000_000_000L;

    private final SessionHeader header;
    private final SessionStore store;
    private final DemoRig rig;
    private final LiveSession session;
    private long nowNanos;

    HeadlessDemo(SessionHeader header, SessionStore store, DemoRig rig) {
        this.header = header;
        this.store = store;
        this.rig = rig;
        this.session = new LiveSession(header);
    }

    /** Runs the job to its end; returns the session's number. */
    long run() throws StoreException, LinkException {
        long number = store.begin(header);
        List<ProbeLink> links = connect();
        DemoGlue glue = new DemoGlue(new DemoTechnician(rig));
        long committed = 0;
        while (!finished() && nowNanos < LONGEST_NANOS) {
            nowNanos += STEP_NANOS;
            rig.advanceTo(nowNanos);
            session.passTo(nowNanos);
            for (Act act : glue.look(snapshot())) {
                session.take(new SessionEvent.Done(nowNanos, act));
            }
            if (nowNanos - committed >= COMMIT_NANOS) {
                committed = nowNanos;
                store.append(number, session.drain());
            }
        }
        links.forEach(ProbeLink::close);
        store.append(number, session.drain());
        store.end(number, nowNanos);
        return number;
    }

    private Snapshot snapshot() {
        return session.snapshot(header.startedAt().plusNanos(nowNanos));
    }

    private boolean finished() {
        return session.job().map(JobState::complete).orElse(true);
    }

    private List<ProbeLink> connect() throws LinkException {
        RigHost host = new RigHost(rig);
        Ticker ticker = new Ticker() {
            @Override
            public long nanos() {
                return nowNanos;
            }

            @Override
            public Instant wall() {
                return header.startedAt().plusNanos(nowNanos);
            }
        };
        List<ProbeLink> links = new ArrayList<>();
        for (int i = 0; i < header.probes().size(); i++) {
            ProbeSetup probe = header.probes().get(i);
            links.add(host.open(probe.address(), probe.profile(), ticker, listener(i)));
        }
        return links;
    }

    private LinkListener listener(int probe) {
        return new LinkListener() {
            @Override
            public void arrived(Chunk chunk) {
                session.take(new SessionEvent.Bytes(probe, chunk));
            }

            @Override
            public void changed(long timeNanos, LinkChange change, String words) {
                session.take(new SessionEvent.Link(probe, timeNanos, change, words));
            }
        };
    }
}
