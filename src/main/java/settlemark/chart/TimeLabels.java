package settlemark.chart;

import java.time.Instant;
import java.time.ZoneOffset;

/** What the time axis says. */
public sealed interface TimeLabels {
    /**
     * Hours and minutes of the day (and seconds, when the ticks are close) at one fixed offset from UTC: over a change
     * to or from daylight saving the labels stay evenly spaced.
     *
     * @param startedAt wall clock at session time 0
     * @param offset of the place when the session began
     */
    record WallClock(Instant startedAt, ZoneOffset offset) implements TimeLabels {}

    /**
     * Seconds or minutes before a moment.
     *
     * @param word that labels the moment, such as "now"
     */
    record Ago(long nowNanos, String word) implements TimeLabels {
        public Ago(long nowNanos) {
            this(nowNanos, "now");
        }
    }

    /** Seconds or minutes since a moment. */
    record Since(long zeroNanos) implements TimeLabels {}
}
