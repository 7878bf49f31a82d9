package settlemark.record;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import settlemark.chart.Lane;
import settlemark.chart.ValueRange;
import settlemark.job.StepState;
import settlemark.measure.Role;
import settlemark.session.JobRecord;
import settlemark.session.SessionHeader;
import settlemark.session.SettleFit;
import settlemark.session.Span;
import settlemark.session.Trace;
import settlemark.settle.ChannelReading;

/** The traces around readings, in the form in which charts take them. */
final class WindowTraces {
    private final JobRecord record;

    WindowTraces(JobRecord record) {
        this.record = record;
    }

    /**
     * A stretch of traces.
     *
     * @param lines one a role
     * @param settled where they were settled
     */
    record Cell(long fromNanos, long toNanos, List<Lane.TraceLine> lines, List<Span> settled) {}

    /** Windows of a step in order of time. */
    List<JobRecord.ReadingWindow> of(StepState step) {
        return record.windows().stream()
                .filter(w -> step.readings().contains(w.reading()))
                .sorted(Comparator.comparingLong(JobRecord.ReadingWindow::toNanos))
                .toList();
    }

    /** The window of the reading that stands for a step, for some roles. */
    Optional<Cell> cell(StepState step, List<Role> roles) {
        return StageColumns.reading(step)
                .flatMap(r ->
                        of(step).stream().filter(w -> w.reading().equals(r)).findFirst())
                .map(w -> new Cell(w.fromNanos(), w.toNanos(), lines(w, roles), spans(w, roles)));
    }

    boolean any(List<StepState> steps, List<Role> roles) {
        return steps.stream()
                .flatMap(s -> cell(s, roles).stream())
                .anyMatch(c -> !c.lines().isEmpty());
    }

    private static List<Lane.TraceLine> lines(JobRecord.ReadingWindow window, List<Role> roles) {
        return window.traces().stream()
                .filter(t -> roles.contains(t.role()))
                .map(WindowTraces::line)
                .toList();
    }

    private static Lane.TraceLine line(JobRecord.RoleTrace trace) {
        return line(trace.role(), trace.timesNanos(), trace.values());
    }

    static Lane.TraceLine line(Role role, long[] timesNanos, double[] values) {
        return Lane.TraceLine.of(role, "", new Trace.Part(timesNanos, values), SettleFit.longestStepNanos(role));
    }

    /** Where all the roles were settled together. */
    private static List<Span> spans(JobRecord.ReadingWindow window, List<Role> roles) {
        List<ChannelReading> settled = window.reading().channels().stream()
                .filter(c -> roles.contains(c.role()))
                .toList();
        if (settled.isEmpty() || !settled.stream().allMatch(ChannelReading::settled)) {
            return List.of();
        }
        long from = settled.stream().mapToLong(ChannelReading::fromNanos).max().orElse(0);
        long to = settled.stream().mapToLong(ChannelReading::toNanos).min().orElse(0);
        return from < to ? List.of(new Span(from, to)) : List.of();
    }

    /** One axis for a row of windows. */
    ValueRange range(List<StepState> steps, List<Role> roles) {
        List<Lane.TraceLine> lines = new ArrayList<>();
        steps.forEach(s -> cell(s, roles).ifPresent(c -> lines.addAll(c.lines())));
        return roofed(0.3, around(lines, roles));
    }

    /** An axis around traces and some more values. */
    ValueRange range(List<Lane.TraceLine> lines, List<Role> roles, double... more) {
        return roofed(0.12, around(lines, roles, more));
    }

    /** With this part of its height more at the top, for the staple over what has settled there. */
    private static ValueRange roofed(double part, ValueRange range) {
        return new ValueRange(range.low(), range.high() + part * (range.high() - range.low()));
    }

    /** A quiet trace is not blown up to look wild. */
    private ValueRange around(List<Lane.TraceLine> lines, List<Role> roles, double... more) {
        List<double[]> values = new ArrayList<>();
        values.add(more);
        lines.forEach(line -> values.add(line.values()));
        return ValueRange.around(leastSpan(roles), values);
    }

    private double leastSpan(List<Role> roles) {
        Role role = roles.isEmpty() ? Role.MANIFOLD : roles.get(0);
        SessionHeader header = record.header();
        return 20
                * SettleFit.settings(role, header.unit(role), header.settings()).driftLimit();
    }
}
