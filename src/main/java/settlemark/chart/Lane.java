package settlemark.chart;

import java.util.List;
import java.util.Objects;
import settlemark.measure.Role;
import settlemark.session.Span;
import settlemark.session.Trace;

/**
 * What one lane of a chart shows: traces that share a unit and an axis, and the marks on them. Immutable; begin with
 * {@link #of} and add. Times are session times, values are in the lane's unit. Marks name a trace by its index.
 *
 * @param unit symbol shown at the axis
 * @param range of the axis
 * @param traces in the order drawn
 * @param bands limits
 * @param spans settled spans
 * @param readings recorded readings
 * @param events moments with words
 * @param targets values to be reached
 * @param differences dimension lines between two values
 * @param headings where a value is going
 */
public record Lane(
        String unit,
        ValueRange range,
        List<TraceLine> traces,
        List<Band> bands,
        List<SettledSpan> spans,
        List<ReadingMark> readings,
        List<EventMark> events,
        List<Target> targets,
        List<Difference> differences,
        List<Heading> headings) {

    public Lane {
        Objects.requireNonNull(unit);
        Objects.requireNonNull(range);
        traces = List.copyOf(traces);
        bands = List.copyOf(bands);
        spans = List.copyOf(spans);
        readings = List.copyOf(readings);
        events = List.copyOf(events);
        targets = List.copyOf(targets);
        differences = List.copyOf(differences);
        headings = List.copyOf(headings);
    }

    /** A lane with traces and nothing else. */
    public static Lane of(String unit, ValueRange range, List<TraceLine> traces) {
        return new Lane(
                unit, range, traces, List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of());
    }

    public Lane withBands(List<Band> added) {
        return new Lane(unit, range, traces, added, spans, readings, events, targets, differences, headings);
    }

    public Lane withSpans(List<SettledSpan> added) {
        return new Lane(unit, range, traces, bands, added, readings, events, targets, differences, headings);
    }

    public Lane withReadings(List<ReadingMark> added) {
        return new Lane(unit, range, traces, bands, spans, added, events, targets, differences, headings);
    }

    public Lane withEvents(List<EventMark> added) {
        return new Lane(unit, range, traces, bands, spans, readings, added, targets, differences, headings);
    }

    public Lane withTarget(Target added) {
        return new Lane(unit, range, traces, bands, spans, readings, events, List.of(added), differences, headings);
    }

    public Lane withDifference(Difference added) {
        return new Lane(unit, range, traces, bands, spans, readings, events, targets, List.of(added), headings);
    }

    public Lane withHeading(Heading added) {
        return new Lane(unit, range, traces, bands, spans, readings, events, targets, differences, List.of(added));
    }

    /**
     * A trace. NaN, or a pause longer than the longest step, is a gap: never bridged, hatched, and labelled with its
     * length where there is room. The arrays are not copied and must not change.
     *
     * @param label name at the line
     * @param note smaller words beside the name, may be empty
     * @param style of the line
     * @param timesNanos in order
     * @param values equally many
     * @param longestStepNanos longest time between neighbours that is no gap
     */
    public record TraceLine(
            String label, String note, LineStyle style, long[] timesNanos, double[] values, long longestStepNanos) {
        public TraceLine {
            Objects.requireNonNull(style);
            if (timesNanos.length != values.length) {
                throw new IllegalArgumentException("trace " + label + " has " + timesNanos.length + " times and "
                        + values.length + " values; they must be equally many");
            }
        }

        /** A role's trace under its own word and style. */
        public static TraceLine of(Role role, String note, Trace.Part part, long longestStepNanos) {
            return new TraceLine(
                    role.word(), note, LineStyle.of(role), part.timesNanos(), part.values(), longestStepNanos);
        }

        /** The same under another name, such as the role's in another language. */
        public TraceLine called(String newLabel) {
            return new TraceLine(newLabel, note, style, timesNanos, values, longestStepNanos);
        }

        /** The same points in another style and under another name, such as the ghost of what was found. */
        public TraceLine as(String newLabel, LineStyle newStyle) {
            return new TraceLine(newLabel, "", newStyle, timesNanos, values, longestStepNanos);
        }
    }

    /**
     * A limit, filled between its ends where the traces' colours allow it, with dotted edges. An infinite end is no
     * edge.
     *
     * @param lower smallest value allowed
     * @param upper largest value allowed
     * @param lowerWords at the lower edge, may be empty
     * @param upperWords at the upper edge, may be empty
     */
    public record Band(double lower, double upper, String lowerWords, String upperWords) {
        public Band(double lower, double upper) {
            this(lower, upper, "", "");
        }
    }

    /** A stretch in which a trace was settled: shaded, under a bar with two feet. */
    public record SettledSpan(int trace, Span span) {}

    /**
     * A recorded reading on its trace.
     *
     * @param words its value with the unit or its name, may be empty
     */
    public record ReadingMark(int trace, long timeNanos, double value, String words) {}

    /** A moment with words and a leader line to its trace. */
    public record EventMark(int trace, long timeNanos, String words) {}

    /** A value to be reached. */
    public record Target(double value, String words) {}

    /**
     * A difference drawn as a dimension line, such as the rise from return to supply.
     *
     * @param low one end
     * @param high the other end
     * @param timeNanos where it stands
     * @param words beside it, large
     * @param note below the words, may be empty
     */
    public record Difference(double low, double high, long timeNanos, String words, String note) {}

    /**
     * Where a trace is going if it is left alone: a dotted path from its last value to an open diamond, and a dimension
     * line from there to the target.
     *
     * @param trace which
     * @param timeNanos when it will be there, after the last value
     * @param value where
     * @param target the value wanted, NaN where there is none
     * @param words at the diamond, may be empty
     */
    public record Heading(int trace, long timeNanos, double value, double target, String words) {}
}
