package settlemark.app;

/**
 * When snapshots are published: as soon as all that came is in one, but on average no oftener than asked for. What comes
 * as often as that is shown at once, and never waits for the next turn. Times in nanoseconds of one clock.
 */
final class SnapshotTurns {
    /** Probes that answer together come within that. */
    static final long QUIET_NANOS = 3_000_000;

    static final long LONGEST_BURST_NANOS = 20_000_000;

    /** Without anything new a turn comes a fifth later, so that it is not right before the next sample. */
    private static final long LATE_PART = 5;

    /**
     * Turns are a fiftieth shorter than asked for: beside what comes just as often they drift until each is right after it.
     */
    private static final long DRIFT_PART = 50;

    private final long everyNanos;
    /** When a turn is due that shows something new, and when one is due without: a session's time goes on. */
    private long freshAt;

    private long lateAt;
    private boolean news;
    private long newsAt;

    SnapshotTurns(long everyNanos, long nowNanos) {
        this.everyNanos = everyNanos - everyNanos / DRIFT_PART;
        freshAt = nowNanos;
        lateAt = nowNanos;
    }

    /** Something came. */
    void news(long nowNanos) {
        if (!news) {
            news = true;
            newsAt = nowNanos;
        }
    }

    /**
     * Whether a snapshot is to be published now; if so, that is noted.
     *
     * @param quiet nothing came for a moment: those of a burst that came first do not leave without the others
     */
    boolean due(long nowNanos, boolean quiet) {
        boolean whole = quiet || nowNanos - Math.max(freshAt, newsAt) >= LONGEST_BURST_NANOS;
        boolean fresh = news && nowNanos - freshAt >= 0 && whole;
        if (!fresh && nowNanos - lateAt < 0) {
            return false;
        }
        news = false;
        // From when it was due, not from when it came: so many a second, and half a turn early after a late one.
        freshAt = Math.max(freshAt, nowNanos - everyNanos / 2) + everyNanos;
        lateAt = nowNanos + everyNanos + everyNanos / LATE_PART;
        return true;
    }

    /** How long nothing is due, if nothing comes. */
    long pauseNanos(long nowNanos) {
        return news ? Math.max(QUIET_NANOS, freshAt - nowNanos) : Math.max(0, lateAt - nowNanos);
    }
}
