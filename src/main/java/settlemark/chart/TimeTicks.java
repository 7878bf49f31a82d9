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

    private static final double SPACE_PX = 12;
    private static final double POINTER_PX = 9;

    private TimeTicks() {}

    /**
     * Ticks of a chart, in seconds after its left edge, so that no label touches another, the right edge or the mark of
     * the present.
     *
     * @param widthPx of the axis at scale 1
     */
    static List<Tick> fitting(LaneView view, double widthPx) {
        double seconds = (view.toNanos() - view.fromNanos()) / 1e9;
        double pxPerSecond = widthPx / seconds;
        long step = step(view.times(), pxPerSecond, seconds);
        double half = labelPx(view.times(), step) / 2;
        double now = view.showsNow() ? (view.nowNanos() - view.fromNanos()) / 1e9 * pxPerSecond : Double.NaN;
        List<Tick> all = between(view.fromNanos(), view.toNanos(), view.times(), step);
        if (view.times() instanceof TimeLabels.Ago ago) {
            return beforeTheWord(all, ago.word(), now, pxPerSecond, widthPx, half);
        }
        return all.stream()
                .filter(t -> t.position() * pxPerSecond + half <= widthPx)
                .filter(t -> !(Math.abs(t.position() * pxPerSecond - now) < half + POINTER_PX))
                .toList();
    }

    /** The word at the present is always said; where the edge is near it ends there, and others keep clear of it. */
    private static List<Tick> beforeTheWord(
            List<Tick> all, String word, double now, double pxPerSecond, double widthPx, double half) {
        double wide = Pen.width(word, Inter.regular(13));
        boolean ending = now + wide / 2 > widthPx;
        double left = now - (ending ? wide : wide / 2);
        List<Tick> fitting = new ArrayList<>();
        for (Tick tick : all) {
            double x = tick.position() * pxPerSecond;
            if (tick.label().equals(word)) {
                fitting.add(new Tick(tick.position(), word, ending));
            } else if (x <= now + 1 && x + half <= (ending ? left - SPACE_PX / 2 : widthPx)) {
                fitting.add(tick);
            }
        }
        return fitting;
    }

    private static long step(TimeLabels labels, double pxPerSecond, double seconds) {
        for (long step : STEPS_SECONDS) {
            if (step * pxPerSecond >= labelPx(labels, step) + SPACE_PX) {
                return step;
            }
        }
        return DAY * Math.max(1, (long) Math.ceil(seconds / DAY));
    }

    private static double labelPx(TimeLabels labels, long step) {
        String widest = labels instanceof TimeLabels.WallClock ? step % 60 == 0 ? "00:00" : "00:00:00" : "000 min";
        return Pen.width(widest, Inter.regular(13));
    }

    /** Ticks at every so many seconds, counted from the labels' own zero: midnight, now, or the start. */
    static List<Tick> between(long fromNanos, long toNanos, TimeLabels labels, long step) {
        long origin = origin(labels);
        List<Tick> ticks = new ArrayList<>();
        for (long k = Math.floorDiv(fromNanos - origin, step * NANOS); origin + k * step * NANOS <= toNanos; k++) {
            long at = origin + k * step * NANOS;
            if (at >= fromNanos) {
                ticks.add(new Tick((at - fromNanos) / 1e9, label(labels, k * step, step)));
            }
        }
        return ticks;
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
            return labels instanceof TimeLabels.Ago ago ? ago.word() : "0";
        }
        long shown = labels instanceof TimeLabels.Ago ? -seconds : seconds;
        return step % 60 == 0 ? shown / 60 + " min" : shown + " s";
    }
}
