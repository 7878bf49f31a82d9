package settlemark.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Chooses the ticks of a time axis. Everything is counted from session time, so no clock change can move a tick. */
final class TimeTicks {
    private static final long NANOS = 1_000_000_000L;
    private static final long DAY = 86_400;
    private static final long[] STEPS_SECONDS = {
        1, 2, 5, 10, 15, 20, 30, 60, 120, 300, 600, 900, 1200, 1800, 3600, 7200, 10_800, 21_600, 43_200, DAY
    };

    private TimeTicks() {}

    /**
     * Ticks between two session times, in seconds after the first.
     *
     * @param labels what they say
     * @param most how many there is room for
     */
    static List<Tick> between(long fromNanos, long toNanos, TimeLabels labels, int most) {
        long step = step((toNanos - fromNanos) / 1e9, Math.max(1, most));
        long origin = origin(labels);
        // The tick numbers count steps from the labels' own zero: midnight, now, or the start.
        long first = Math.floorDiv(fromNanos - origin, step * NANOS);
        List<Tick> ticks = new ArrayList<>();
        for (long k = first; origin + k * step * NANOS <= toNanos; k++) {
            long at = origin + k * step * NANOS;
            if (at >= fromNanos) {
                ticks.add(new Tick((at - fromNanos) / 1e9, label(labels, k * step, step)));
            }
        }
        return ticks;
    }

    /** Room that a label needs, in characters. */
    static int widestLabel(TimeLabels labels, long fromNanos, long toNanos, int most) {
        return between(fromNanos, toNanos, labels, most).stream()
                .mapToInt(t -> t.label().length())
                .max()
                .orElse(0);
    }

    private static long step(double spanSeconds, int most) {
        for (long step : STEPS_SECONDS) {
            if (spanSeconds / step <= most) {
                return step;
            }
        }
        return DAY * (long) Math.ceil(spanSeconds / DAY / most);
    }

    /** Session time at which the labels count zero. */
    private static long origin(TimeLabels labels) {
        if (labels instanceof TimeLabels.WallClock clock) {
            long secondOfDay = Math.floorMod(
                    clock.startedAt().getEpochSecond() + clock.offset().getTotalSeconds(), DAY);
            return -(secondOfDay * NANOS + clock.startedAt().getNano());
        }
        if (labels instanceof TimeLabels.Ago ago) {
            return ago.nowNanos();
        }
        return ((TimeLabels.Since) labels).zeroNanos();
    }

    private static String label(TimeLabels labels, long seconds, long step) {
        if (labels instanceof TimeLabels.WallClock) {
            long day = Math.floorMod(seconds, DAY);
            String minutes = String.format(Locale.ROOT, "%02d:%02d", day / 3600, day / 60 % 60);
            return step % 60 == 0 ? minutes : minutes + String.format(Locale.ROOT, ":%02d", day % 60);
        }
        if (seconds == 0) {
            return labels instanceof TimeLabels.Ago ? "now" : "0";
        }
        long shown = labels instanceof TimeLabels.Ago ? -seconds : seconds;
        return step % 60 == 0 ? shown / 60 + " min" : shown + " s";
    }
}
