package settlemark.ui;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import settlemark.measure.Conversion;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.session.Overview;
import settlemark.session.SnapshotUnits;
import settlemark.session.Span;

/**
 * The channels of a stored session in a stretch of time, as closely as a picture shows them; immutable.
 *
 * @param span the stretch
 * @param lines one a channel that has a role
 */
record WindowTraces(Span span, List<Line> lines) {
    static final WindowTraces NONE = new WindowTraces(new Span(0, 1), List.of());

    WindowTraces {
        lines = List.copyOf(lines);
    }

    /** The same in other units. */
    WindowTraces in(SnapshotUnits units) {
        return new WindowTraces(
                span, lines.stream().map(l -> l.in(units.shown(l.unit()))).toList());
    }

    /**
     * One channel. The arrays are not copied and must not change.
     *
     * @param role where it was connected
     * @param unit the job's, zero taken off
     * @param timesNanos in order
     * @param values NaN where there was no measurement
     * @param longestStepNanos longest time between neighbours that is no gap
     * @param everySample false where a column's first, least, greatest and last stand for it
     */
    record Line(Role role, Unit unit, long[] timesNanos, double[] values, long longestStepNanos, boolean everySample) {

        /** From columns; within one its least and greatest have no known order. */
        static Line of(ReviewReader.Source source, Unit unit, Overview seen, double zero, long gapNanos) {
            int columns = seen.columns();
            double width = (double) (seen.span().toNanos() - seen.span().fromNanos()) / columns;
            long[] times = new long[4 * columns];
            double[] values = new double[4 * columns];
            int size = 0;
            for (int i = 0; i < columns; i++) {
                if (seen.counts()[i] > 0) {
                    double left = seen.span().fromNanos() + i * width;
                    double[] four = {seen.firsts()[i], seen.mins()[i], seen.maxs()[i], seen.lasts()[i]};
                    for (int k = 0; k < four.length; k++) {
                        times[size] = Math.round(left + width * (k + 0.5) / four.length);
                        values[size++] = source.conversion().apply(four[k]) - zero;
                    }
                }
            }
            return new Line(
                    source.role(),
                    unit,
                    Arrays.copyOf(times, size),
                    Arrays.copyOf(values, size),
                    // A group of samples lies whole in the column that it begins in.
                    Math.max(gapNanos, Math.round(2.5 * width)),
                    false);
        }

        /** The same with a sample before all others; as it is where it is none before them. */
        Line behind(long timeNanos, double value) {
            if (timesNanos.length > 0 && timesNanos[0] <= timeNanos) {
                return this;
            }
            long[] times = new long[timesNanos.length + 1];
            double[] all = new double[values.length + 1];
            times[0] = timeNanos;
            all[0] = value;
            System.arraycopy(timesNanos, 0, times, 1, timesNanos.length);
            System.arraycopy(values, 0, all, 1, values.length);
            return new Line(role, unit, times, all, longestStepNanos, everySample);
        }

        /** The value that stood at a time, empty in a gap. */
        OptionalDouble at(long timeNanos) {
            int at = Arrays.binarySearch(timesNanos, timeNanos);
            int index = at >= 0 ? at : -at - 2;
            boolean known =
                    index >= 0 && timeNanos - timesNanos[index] <= longestStepNanos && Double.isFinite(values[index]);
            return known ? OptionalDouble.of(values[index]) : OptionalDouble.empty();
        }

        /** The same in another unit. */
        Line in(Unit other) {
            if (other.equals(unit)) {
                return this;
            }
            Conversion change = unit.to(other);
            double[] changed = new double[values.length];
            for (int i = 0; i < changed.length; i++) {
                changed[i] = change.apply(values[i]);
            }
            return new Line(role, other, timesNanos, changed, longestStepNanos, everySample);
        }

        /** The same, that much later. */
        Line later(long byNanos) {
            long[] moved = timesNanos.clone();
            for (int i = 0; i < moved.length; i++) {
                moved[i] += byNanos;
            }
            return new Line(role, unit, moved, values, longestStepNanos, everySample);
        }
    }
}
