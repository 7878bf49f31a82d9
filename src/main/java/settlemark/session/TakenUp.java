package settlemark.session;

import java.time.Duration;
import java.time.Instant;
import settlemark.job.Act;

/**
 * A stored job that goes on where it stopped: the same session, out of its events, with a gap that is marked. Nothing that
 * was armed takes a reading across the gap.
 *
 * @param session as it stands, the gap in it
 * @param fromNanos session time of the going on
 */
public record TakenUp(LiveSession session, long fromNanos) {
    private static final long LEAST_GAP_NANOS = 1_000_000_000L;

    /**
     * Takes a job up again.
     *
     * @param keys of probes whose frames are protected
     * @param wall the wall clock now; session time goes on by it, but never back
     * @throws StoreException where the session is a plain log, its job is complete, or its bytes were not kept
     */
    public static TakenUp of(SessionStore store, long number, ProbeKeys keys, Instant wall) throws StoreException {
        LiveSession session = RecordSource.replay(store, number, keys);
        if (session.job().isEmpty()) {
            throw new StoreException(
                    StoreException.Cause.FAULT, "session " + number + " is a log without a job: nothing goes on in it");
        }
        if (session.job().get().complete()) {
            throw new StoreException(
                    StoreException.Cause.FAULT,
                    "the job of session " + number + " is complete; begin a new one for another visit");
        }
        long last = store.find(Long.toString(number)).orElseThrow().durationNanos();
        Duration since = Duration.between(session.header().startedAt(), wall);
        boolean setBack = since.compareTo(Duration.ofNanos(last)) < 0;
        long from = setBack ? last + LEAST_GAP_NANOS : Math.max(last + LEAST_GAP_NANOS, since.toNanos());
        mark(session, last + 1, from, setBack);
        return new TakenUp(session, from);
    }

    private static void mark(LiveSession session, long at, long from, boolean setBack) {
        String why = setBack
                ? "the program had ended; for how long is not known, as the clock stands before the session's last entry"
                : "the program had ended for " + (from - at + 999_999_999L) / 1_000_000_000L + " s";
        for (int i = 0; i < session.header().probes().size(); i++) {
            session.take(new SessionEvent.Link(i, at, LinkChange.LOST, "the program had ended"));
        }
        session.take(new SessionEvent.Clock(from, true, from - at, why));
        session.take(new SessionEvent.Done(from, new Act.GoOn(why)));
    }
}
