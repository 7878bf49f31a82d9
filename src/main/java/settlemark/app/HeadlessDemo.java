package settlemark.app;

import java.time.Instant;
import java.util.function.LongConsumer;
import settlemark.job.Act;
import settlemark.job.JobState;
import settlemark.rig.DemoRig;
import settlemark.rig.DemoTechnician;
import settlemark.session.LinkException;
import settlemark.session.LiveSession;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.Snapshot;
import settlemark.session.StoreException;
import settlemark.session.Ticker;

/** The demo's job without a window, as fast as the computer goes: the same pipeline, on the rig's own time. */
final class HeadlessDemo {
    private static final long LOOK_NANOS = 200_000_000;
    private static final long COMMIT_NANOS = 10_000_000_000L;
    private static final long LONGEST_NANOS = 4 * 3_600_000_000_000L;

    private final SessionHeader header;
    private final SessionStore store;
    private final DemoRig rig;
    private final DemoWiring wiring;
    private final LiveSession session;
    private final LongConsumer stepped;
    private volatile long nowNanos;

    /** With the instruments within the program. */
    HeadlessDemo(SessionHeader header, SessionStore store, DemoRig rig, LongConsumer stepped) {
        this(header, store, rig, new WireWiring(rig), stepped);
    }

    /** @param stepped hears the session time of each step, after the rig has got there */
    HeadlessDemo(SessionHeader header, SessionStore store, DemoRig rig, DemoWiring wiring, LongConsumer stepped) {
        this.wiring = wiring;
        this.stepped = stepped;
        this.header = header;
        this.store = store;
        this.rig = rig;
        this.session = new LiveSession(header);
    }

    /** Runs the job to its end; returns the session's number. */
    long run() throws StoreException, LinkException {
        long number = store.begin(header);
        wiring.open(header, ticker(), session::take);
        DemoGlue glue = new DemoGlue(new DemoTechnician(rig));
        long committed = 0;
        while (!finished() && nowNanos < LONGEST_NANOS) {
            long look = nowNanos + LOOK_NANOS;
            while (nowNanos < look) {
                nowNanos += wiring.stepNanos();
                rig.advanceTo(nowNanos);
                wiring.settle();
            }
            stepped.accept(nowNanos);
            session.passTo(nowNanos);
            for (Act act : glue.look(snapshot())) {
                session.take(new SessionEvent.Done(nowNanos, act));
            }
            if (nowNanos - committed >= COMMIT_NANOS) {
                committed = nowNanos;
                store.append(number, session.drain());
            }
        }
        wiring.close();
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

    private Ticker ticker() {
        return new Ticker() {
            @Override
            public long nanos() {
                return nowNanos;
            }

            @Override
            public Instant wall() {
                return header.startedAt().plusNanos(nowNanos);
            }
        };
    }
}
