package settlemark.app;

import java.time.Instant;
import java.time.ZoneOffset;
import settlemark.job.Act;
import settlemark.measure.Chunk;
import settlemark.rig.DemoInstrument;
import settlemark.rig.DemoRig;
import settlemark.session.LiveSession;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;

/** Two minutes of a job on the rig, as far as its zero. */
final class TwoMinutes {
    private static final long NANOS = 120_000_000_000L;

    private TwoMinutes() {}

    /** Stores them; returns the session's number. */
    static long in(SessionStore store) throws StoreException {
        SessionHeader header = DemoScene.header(Instant.parse("2026-03-14T09:30:00Z"), ZoneOffset.UTC, "test");
        long session = store.begin(header);
        LiveSession live = new LiveSession(header);
        DemoRig rig = new DemoRig(new DemoRig.Settings(7, true));
        rig.portsOpen(true);
        for (DemoInstrument instrument : DemoInstrument.values()) {
            int probe = instrument.ordinal();
            rig.connect(instrument, chunk -> live.take(bytes(probe, chunk)));
        }
        act(live, 1, new Act.Confirm("plate"));
        act(live, 2, new Act.Confirm("probes"));
        act(live, 3, new Act.Confirm("zero"));
        for (long t = 4_000_000_000L; t <= NANOS; t += 1_000_000_000L) {
            rig.advanceTo(t);
            live.passTo(t);
            store.append(session, live.drain());
        }
        store.end(session, NANOS);
        return session;
    }

    private static SessionEvent bytes(int probe, Chunk chunk) {
        return new SessionEvent.Bytes(probe, chunk);
    }

    private static void act(LiveSession live, long seconds, Act act) {
        live.take(new SessionEvent.Done(seconds * 1_000_000_000L, act));
    }
}
