package settlemark.ui;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import settlemark.chart.Lane;
import settlemark.chart.LaneGroup;
import settlemark.chart.LaneView;
import settlemark.chart.LineStyle;
import settlemark.chart.TimeLabels;
import settlemark.chart.ValueRange;
import settlemark.job.Limit;
import settlemark.job.RatingPlate;
import settlemark.job.StagePlate;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.measure.Role;
import settlemark.session.SessionHeader;
import settlemark.session.Snapshot;
import settlemark.session.Span;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/** What the charts of a review show: the open stretch of time, and the whole session. */
final class ReviewCharts {
    private static final double LEAST_PRESSURE = 0.2;
    private static final double LEAST_TEMPERATURE = 5;

    private ReviewCharts() {}

    /** The open stretch, with spans, readings, notes and what lies under it. */
    static Optional<LaneView> open(ReviewScene scene, boolean ribbon) {
        List<Lane> lanes = new ArrayList<>();
        for (LaneGroup group : groups(scene.traces())) {
            lanes.add(lane(scene, group));
        }
        return lanes.isEmpty()
                ? Optional.empty()
                : Optional.of(new LaneView(
                        scene.view().fromNanos(),
                        scene.view().toNanos(),
                        scene.lineNanos(),
                        clock(scene.session().header()),
                        lanes,
                        ribbon));
    }

    /** The whole session in one lane: the pressures, or the first that there is where there are none. */
    static Optional<LaneView> whole(ReviewScene scene) {
        List<LaneGroup> groups = groups(scene.whole());
        if (groups.isEmpty()) {
            return Optional.empty();
        }
        List<WindowTraces.Line> lines = lines(scene.whole(), groups.get(0));
        List<Lane.TraceLine> traces = new ArrayList<>();
        lines.forEach(l -> traces.add(traced(l, "", LineStyle.of(l.role()))));
        Lane lane = Lane.of(
                        lines.get(0).unit().symbol(),
                        fitting(lines, scene.session().whole()),
                        traces)
                .withSpans(readSpans(scene.session().readings(), lines));
        Span whole = scene.session().whole();
        return Optional.of(new LaneView(
                whole.fromNanos(),
                whole.toNanos(),
                scene.lineNanos(),
                clock(scene.session().header()),
                List.of(lane),
                false));
    }

    private static TimeLabels clock(SessionHeader header) {
        return new TimeLabels.WallClock(
                header.startedAt(), header.zone().getRules().getOffset(header.startedAt()));
    }

    static List<LaneGroup> groups(WindowTraces traces) {
        return LaneGroup.of(traces.lines().stream().map(WindowTraces.Line::role).toList());
    }

    private static List<WindowTraces.Line> lines(WindowTraces traces, LaneGroup group) {
        return traces.lines().stream()
                .filter(l -> LaneGroup.of(l.role()) == group)
                .toList();
    }

    private static Lane.TraceLine traced(WindowTraces.Line line, String label, LineStyle style) {
        return new Lane.TraceLine(label, "", style, line.timesNanos(), line.values(), line.longestStepNanos());
    }

    private static Lane lane(ReviewScene scene, LaneGroup group) {
        List<WindowTraces.Line> lines = lines(scene.traces(), group);
        List<Lane.TraceLine> traces = new ArrayList<>();
        lines.forEach(l -> traces.add(traced(l, Words.told(l.role().word()), LineStyle.of(l.role()))));
        scene.laid()
                .ifPresent(laid -> lines(laid.traces(), group)
                        .forEach(l -> traces.add(traced(l, Words.told(laid.name()), LineStyle.GHOST))));
        ValueRange range = fitting(lines, scene.view());
        boolean asRow = scene.session()
                .span(scene.step())
                .map(s -> s.equals(scene.view()))
                .orElse(false);
        if (scene.axes().isPresent() && asRow && !group.hasOwnAxis()) {
            range = scene.axes().get().of(lines.get(0).role());
        }
        List<Lane.SettledSpan> spans = new ArrayList<>(settled(scene, lines));
        List<Lane.ReadingMark> readings = new ArrayList<>();
        List<Lane.EventMark> events = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            marks(scene, lines.get(i), i, readings);
        }
        if (group == groups(scene.traces()).get(0)) {
            int carrying = lines.size() - 1;
            scene.session().moments().stream()
                    .filter(m -> inside(scene.view(), m.timeNanos()))
                    .forEach(m -> events.add(new Lane.EventMark(carrying, m.timeNanos(), Words.told(m.words()))));
        }
        return Lane.of(lines.get(0).unit().symbol(), range, traces)
                .withBands(bands(scene, lines))
                .withSpans(spans)
                .withReadings(readings)
                .withEvents(events);
    }

    private static List<Lane.Band> bands(ReviewScene scene, List<WindowTraces.Line> lines) {
        Optional<StepState> open = scene.open();
        Optional<RatingPlate> plate = scene.session().header().plate();
        List<Lane.Band> bands = new ArrayList<>();
        if (open.isEmpty() || plate.isEmpty()) {
            return bands;
        }
        StepKind kind = open.get().step().kind();
        for (WindowTraces.Line line : lines) {
            Optional<Limit> limit = Optional.empty();
            if (line.role() == Role.INLET && kind != StepKind.ZERO && kind != StepKind.CLOSE) {
                limit = Optional.of(plate.get().inlet());
            } else if (line.role() == Role.MANIFOLD) {
                limit = plate.get().stages().stream()
                        .filter(s -> s.key().equals(open.get().step().stage()))
                        .map(StagePlate::manifoldLimit)
                        .findFirst();
            }
            limit.map(l -> l.to(line.unit())).ifPresent(l -> bands.add(new Lane.Band(l.lower(), l.upper())));
        }
        return bands;
    }

    /** As the detectors decided, where the session was run through again; else as the readings say. */
    private static List<Lane.SettledSpan> settled(ReviewScene scene, List<WindowTraces.Line> lines) {
        Optional<Snapshot> replayed = scene.session().replayed();
        if (replayed.isEmpty()) {
            return readSpans(scene.session().readings(), lines);
        }
        List<Lane.SettledSpan> spans = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            int trace = i;
            replayed.get()
                    .channel(lines.get(i).role())
                    .ifPresent(c -> c.settledSpans().stream()
                            .filter(s -> s.toNanos() > scene.view().fromNanos()
                                    && s.fromNanos() < scene.view().toNanos())
                            .forEach(s -> spans.add(new Lane.SettledSpan(trace, s))));
        }
        return spans;
    }

    private static List<Lane.SettledSpan> readSpans(List<StageReading> readings, List<WindowTraces.Line> lines) {
        List<Lane.SettledSpan> spans = new ArrayList<>();
        for (StageReading reading : readings) {
            for (int i = 0; i < lines.size(); i++) {
                int trace = i;
                reading.channel(lines.get(i).role())
                        .filter(ChannelReading::settled)
                        .ifPresent(c -> spans.add(new Lane.SettledSpan(
                                trace, new Span(c.fromNanos(), Math.max(c.fromNanos() + 1, c.toNanos())))));
            }
        }
        return spans;
    }

    private static void marks(ReviewScene scene, WindowTraces.Line line, int trace, List<Lane.ReadingMark> readings) {
        for (StageReading reading : scene.session().readings()) {
            if (inside(scene.view(), reading.timeNanos())) {
                reading.channel(line.role())
                        .ifPresent(c -> readings.add(new Lane.ReadingMark(trace, reading.timeNanos(), c.value(), "")));
            }
        }
    }

    private static boolean inside(Span view, long timeNanos) {
        return timeNanos >= view.fromNanos() && timeNanos <= view.toNanos();
    }

    /** The values within a stretch, with room around them. */
    private static ValueRange fitting(List<WindowTraces.Line> lines, Span view) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (WindowTraces.Line line : lines) {
            for (int i = 0; i < line.values().length; i++) {
                if (inside(view, line.timesNanos()[i]) && Double.isFinite(line.values()[i])) {
                    low = Math.min(low, line.values()[i]);
                    high = Math.max(high, line.values()[i]);
                }
            }
        }
        LaneGroup group = LaneGroup.of(lines.get(0).role());
        if (group.hasOwnAxis()) {
            return group.around(low, high);
        }
        boolean pressure = group == LaneGroup.PRESSURE;
        return ValueRange.around(pressure ? LEAST_PRESSURE : LEAST_TEMPERATURE, low, high);
    }
}
