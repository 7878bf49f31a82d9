package settlemark.app;

import java.util.function.LongConsumer;
import settlemark.job.JobState;
import settlemark.rig.DemoRig;
import settlemark.session.LinkException;
import settlemark.session.LiveSession;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;

/** The demo's job without a window and without anybody: simulated hands do all of it. */
final class HeadlessDemo {
    private static final long LONGEST_NANOS = 4 * 3_600_000_000_000L;

    private final SessionHeader header;
    private final SessionStore store;
    private final DemoRig rig;
    private final DemoWiring wiring;
    private final LongConsumer stepped;

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
    }

    /** Runs the job to its end; returns the session's number. */
    long run() throws StoreException, LinkException {
        long number = store.begin(header);
        LiveSession session = new LiveSession(header);
        RigFloor floor = new RigFloor(session, store, number, rig, wiring, 0, stepped);
        floor.handsAtWork(true);
        while (!session.job().map(JobState::complete).orElse(true) && floor.nowNanos() < LONGEST_NANOS) {
            floor.pass();
        }
        floor.end();
        return number;
    }
}
