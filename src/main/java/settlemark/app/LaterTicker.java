package settlemark.app;

import java.time.Instant;
import java.util.List;
import settlemark.session.SessionEvent;
import settlemark.session.Ticker;

/** The computer's time for a session that goes on: from its last entry on instead of from 0. */
final class LaterTicker implements Ticker {
    private final SystemTicker ticker = new SystemTicker();
    private volatile long fromNanos;

    /** From now on the session's time is this much more than the time since the making. */
    void from(long nanos) {
        fromNanos = nanos - ticker.nanos();
    }

    /** Whether the session began before this program. */
    boolean isLater() {
        return fromNanos != 0;
    }

    @Override
    public long nanos() {
        return ticker.nanos() + fromNanos;
    }

    @Override
    public Instant wall() {
        return ticker.wall();
    }

    List<SessionEvent.Clock> events() {
        return ticker.events().stream()
                .map(e -> new SessionEvent.Clock(e.timeNanos() + fromNanos, e.slept(), e.amountNanos(), e.words()))
                .toList();
    }
}
