package settlemark.app;

import java.time.Instant;
import java.util.function.Consumer;
import java.util.function.LongConsumer;
import settlemark.job.Act;
import settlemark.measure.Chunk;
import settlemark.rig.DemoRig;
import settlemark.rig.DemoTechnician;
import settlemark.session.JobFloor;
import settlemark.session.LinkException;
import settlemark.session.LiveSession;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.Snapshot;
import settlemark.session.StoreException;
import settlemark.session.Ticker;

/**
 * A job on the rig without a window, as fast as the computer goes: the same pipeline, on the rig's own time. For one
 * thread.
 */
final class RigFloor implements JobFloor {
    private static final long LOOK_NANOS = 200_000_000;
    private static final long COMMIT_NANOS = 10_000_000_000L;

    private final SessionHeader header;
    private final SessionStore store;
    private final long number;
    private final DemoRig rig;
    private final DemoWiring wiring;
    private final LiveSession session;
    private final DemoGlue glue;
    private final LongConsumer stepped;
    /** Session time at the rig's start. */
    private final long fromNanos;

    private long nowNanos;
    private long committedNanos;
    private boolean atWork;

    /**
     * @param session that is new, or has been taken up again
     * @param number of it in the store
     * @param fromNanos session time of the rig's start
     * @param stepped hears the session time of each step, after the rig has got there
     */
    RigFloor(
            LiveSession session,
            SessionStore store,
            long number,
            DemoRig rig,
            DemoWiring wiring,
            long fromNanos,
            LongConsumer stepped)
            throws LinkException {
        this.header = session.header();
        this.session = session;
        this.store = store;
        this.number = number;
        this.rig = rig;
        this.wiring = wiring;
        this.fromNanos = fromNanos;
        this.stepped = stepped;
        this.glue = new DemoGlue(new DemoTechnician(rig), rig);
        this.nowNanos = fromNanos;
        wiring.open(header, ticker(), later(session::take));
    }

    /** The rig's time begins at 0 each time; the session's goes on. */
    private Consumer<SessionEvent> later(Consumer<SessionEvent> taken) {
        if (fromNanos == 0) {
            return taken;
        }
        return event -> {
            if (event instanceof SessionEvent.Bytes bytes) {
                Chunk chunk = bytes.chunk();
                taken.accept(
                        new SessionEvent.Bytes(bytes.probe(), new Chunk(chunk.timeNanos() + fromNanos, chunk.bytes())));
            } else {
                taken.accept(event);
            }
        };
    }

    @Override
    public void pass() throws StoreException, LinkException {
        long look = nowNanos + LOOK_NANOS;
        while (nowNanos < look) {
            nowNanos += wiring.stepNanos();
            rig.advanceTo(nowNanos - fromNanos);
            wiring.settle();
        }
        stepped.accept(nowNanos);
        session.passTo(nowNanos);
        if (atWork) {
            for (Act act : glue.look(snapshot())) {
                session.take(new SessionEvent.Done(nowNanos, act));
            }
        }
        if (nowNanos - committedNanos >= COMMIT_NANOS) {
            commit();
        }
    }

    private void commit() throws StoreException {
        committedNanos = nowNanos;
        store.append(number, session.drain());
    }

    long nowNanos() {
        return nowNanos;
    }

    @Override
    public Snapshot snapshot() {
        return session.snapshot(header.startedAt().plusNanos(nowNanos));
    }

    @Override
    public void act(Act act) {
        session.take(new SessionEvent.Done(nowNanos, act));
        try {
            commit();
        } catch (StoreException e) {
            session.stored(new Snapshot.Stored(-1, 0, String.valueOf(e.getMessage())));
        }
    }

    @Override
    public boolean handsAreSimulated() {
        return true;
    }

    @Override
    public void handsAtWork(boolean work) throws StoreException {
        atWork = work;
        if (!work) {
            commit();
        }
    }

    /** Stores the rest and lets the instruments go; the session can be taken up again. */
    void leave() throws StoreException {
        wiring.close();
        store.append(number, session.drain());
    }

    /** The same, and marks the session's end. */
    void end() throws StoreException {
        leave();
        store.end(number, nowNanos);
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
