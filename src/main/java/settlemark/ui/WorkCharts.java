package settlemark.ui;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import settlemark.chart.Lane;
import settlemark.chart.LaneGroup;
import settlemark.chart.LaneView;
import settlemark.chart.LineStyle;
import settlemark.chart.TimeLabels;
import settlemark.chart.ValueRange;
import settlemark.job.Limit;
import settlemark.job.StagePlate;
import settlemark.job.StepState;
import settlemark.measure.Dimension;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.session.ChannelView;
import settlemark.session.Snapshot;
import settlemark.session.Span;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/**
 * What the charts of a step show: its channels in lanes on the axes of the rows, limits, spans, readings, moments. The
 * ribbon that says SIMULATED runs over the whole strip, right above them, so they do not draw another.
 */
final class WorkCharts {
    static final long WORK_NANOS = 240_000_000_000L;
    static final long ADJUST_NANOS = 60_000_000_000L;
    private static final long LONGEST_NANOS = 900_000_000_000L;

    private WorkCharts() {}

    /** The lanes at work: pressures above, temperatures below, the present at the right edge. */
    static LaneView work(Scene scene) {
        Snapshot snapshot = scene.snapshot();
        StepState open = scene.open();
        boolean done = open.done() && !scene.live();
        long now = snapshot.timeNanos();
        long to = done ? Math.max(1, open.doneNanos()) : now;
        long from = to - WORK_NANOS;
        if (done) {
            from = Math.max(to - LONGEST_NANOS, Math.min(to - ADJUST_NANOS, open.openedNanos()));
        }
        List<Lane> lanes = new ArrayList<>();
        List<Role> roles = snapshot.channels().stream().map(ChannelView::role).toList();
        for (LaneGroup group : LaneGroup.of(roles)) {
            lanes.add(lane(scene, group, from, to, done));
        }
        return new LaneView(from, done ? to : to + (to - from) / 30, done ? -1 : now, clock(snapshot), lanes, false);
    }

    /** What the strip has a row for: dimensions that have channels, pressure first. */
    static List<Dimension> lanes(Snapshot snapshot) {
        return List.of(Dimension.PRESSURE, Dimension.TEMPERATURE).stream()
                .filter(d -> snapshot.channels().stream().anyMatch(c -> c.role().dimension() == d))
                .toList();
    }

    private static TimeLabels clock(Snapshot snapshot) {
        return new TimeLabels.WallClock(
                snapshot.header().startedAt(),
                snapshot.header().zone().getRules().getOffset(snapshot.header().startedAt()));
    }

    private static Lane lane(Scene scene, LaneGroup group, long from, long to, boolean done) {
        List<ChannelView> channels = scene.snapshot().channels().stream()
                .filter(c -> LaneGroup.of(c.role()) == group)
                .toList();
        List<Lane.TraceLine> traces = new ArrayList<>();
        List<Lane.Band> bands = new ArrayList<>();
        List<Lane.SettledSpan> spans = new ArrayList<>();
        List<Lane.ReadingMark> readings = new ArrayList<>();
        List<Lane.EventMark> events = new ArrayList<>();
        for (int i = 0; i < channels.size(); i++) {
            ChannelView channel = channels.get(i);
            Optional<Limit> limit = limit(scene, channel.role(), channel.unit());
            String note = limit.map(l -> VerdictBox.range(l.lower(), l.upper())).orElse("");
            traces.add(trace(channel, note, from, to));
            limit.ifPresent(l -> bands.add(new Lane.Band(l.lower(), l.upper())));
            for (Span span : spans(scene, channel, done)) {
                if (span.toNanos() > from && span.fromNanos() < to) {
                    spans.add(new Lane.SettledSpan(i, span));
                }
            }
            marks(scene, channel, i, readings, events);
        }
        String unit = channels.get(0).unit().symbol();
        ValueRange range = group.hasOwnAxis()
                ? group.around(traces.stream()
                        .flatMapToDouble(t -> Arrays.stream(t.values()))
                        .toArray())
                : scene.axes().of(channels.get(0).role());
        Lane lane = Lane.of(unit, range, traces)
                .withBands(bands)
                .withSpans(spans)
                .withReadings(readings)
                .withEvents(events);
        return group == LaneGroup.AIR ? withRise(lane, scene, from, to, done) : lane;
    }

    static Lane.TraceLine trace(ChannelView channel, String note, long from, long to) {
        return Lane.TraceLine.of(
                        channel.role(),
                        note,
                        channel.trace().part(from, to).minus(channel.zeroOffset() - channel.correction()),
                        (long) (channel.settings().gapSeconds() * 1e9))
                .called(Words.told(channel.role().word()));
    }

    /** The plate's limit of a pressure in this step, in the row's unit. */
    static Optional<Limit> limit(Scene scene, Role role, Unit unit) {
        if (role == Role.INLET
                && scene.kind() != settlemark.job.StepKind.ZERO
                && scene.kind() != settlemark.job.StepKind.CLOSE) {
            return Optional.of(scene.job().plate().inlet().to(unit));
        }
        if (role == Role.MANIFOLD) {
            return scene.stage().map(StagePlate::manifoldLimit).map(l -> l.to(unit));
        }
        return Optional.empty();
    }

    private static List<Span> spans(Scene scene, ChannelView channel, boolean done) {
        if (!done) {
            return channel.settledSpans();
        }
        return scene.open()
                .reading()
                .flatMap(r -> r.channel(channel.role()))
                .filter(ChannelReading::settled)
                .map(c -> List.of(new Span(c.fromNanos(), c.toNanos())))
                .orElse(List.of());
    }

    private static void marks(
            Scene scene, ChannelView channel, int trace, List<Lane.ReadingMark> readings, List<Lane.EventMark> events) {
        for (StageReading reading : scene.open().readings()) {
            reading.channel(channel.role())
                    .ifPresent(c -> readings.add(new Lane.ReadingMark(trace, reading.timeNanos(), c.value(), "")));
        }
        boolean carries = channel.role() == Role.MANIFOLD || channel.role() == Role.INLET && !has(scene, Role.MANIFOLD);
        if (carries) {
            scene.open()
                    .marks()
                    .forEach(m -> events.add(new Lane.EventMark(trace, m.timeNanos(), Words.told(m.words()))));
        }
    }

    private static boolean has(Scene scene, Role role) {
        return scene.snapshot().channel(role).isPresent();
    }

    /** The rise as a dimension line, with the plate's range as a band above the return. */
    private static Lane withRise(Lane lane, Scene scene, long from, long to, boolean done) {
        if (!scene.kind().firing()) {
            return lane;
        }
        Optional<StageReading> reading = done ? scene.open().reading() : Optional.empty();
        double low = reading.flatMap(r -> r.channel(Role.RETURN))
                .map(ChannelReading::value)
                .orElseGet(() -> value(scene, Role.RETURN));
        double high = reading.flatMap(r -> r.channel(Role.SUPPLY))
                .map(ChannelReading::value)
                .orElseGet(() -> value(scene, Role.SUPPLY));
        if (!Double.isFinite(low) || !Double.isFinite(high)) {
            return lane;
        }
        Unit unit = scene.snapshot().header().temperatureUnit().difference();
        Limit rise = scene.job().plate().rise().to(unit);
        String words =
                Words.say("rise {0}", Numbers.fixed(high - low, CellValues.decimals(Role.SUPPLY, scene.snapshot())));
        String note =
                Words.say("range {0}, {1}", VerdictBox.range(rise.lower(), rise.upper()), Words.told(rise.source()));
        return lane.withBands(List.of(new Lane.Band(low + rise.lower(), low + rise.upper())))
                .withDifference(new Lane.Difference(low, high, to - (to - from) / 10, words, note));
    }

    private static double value(Scene scene, Role role) {
        return scene.snapshot().channel(role).map(ChannelView::value).orElse(Double.NaN);
    }

    /** The single lane while adjusting: the manifold around its target, the last minute. */
    static LaneView adjust(Scene scene, ChannelView manifold, StagePlate stage) {
        Snapshot snapshot = scene.snapshot();
        long now = snapshot.timeNanos();
        long from = now - ADJUST_NANOS;
        Limit limit = stage.manifoldLimit().to(manifold.unit());
        double target = stage.unit().to(manifold.unit()).apply(stage.manifoldTarget());
        Lane.TraceLine trace = trace(manifold, "", from, now);
        List<Lane.TraceLine> traces = new ArrayList<>();
        traces.add(trace.as(Words.say("manifold"), LineStyle.ALONE));
        found(scene, manifold)
                .ifPresent(v -> traces.add(level(v, now - ADJUST_NANOS / 4, now, Gap.decimals(manifold))));
        Limit read = limit.shown();
        Lane lane = Lane.of(manifold.unit().symbol(), around(target, limit, manifold.value()), traces)
                .withBands(List.of(new Lane.Band(
                        limit.lower(),
                        limit.upper(),
                        Words.say("{0}, lower limit", Numbers.plain(read.lower())),
                        Words.say("{0}, upper limit, {1}", Numbers.plain(read.upper()), Words.told(limit.source())))))
                .withTarget(new Lane.Target(
                        target, Words.say("target {0}", Numbers.fixed(target, Gap.decimals(manifold)))));
        return new LaneView(
                from, now + ADJUST_NANOS / 9, now, new TimeLabels.Ago(now, Words.say("now")), List.of(lane), false);
    }

    /** As found, at the same stage. */
    static Optional<Double> found(Scene scene, ChannelView manifold) {
        return scene.job().steps().stream()
                .filter(s -> s.step().kind() == settlemark.job.StepKind.FOUND && !s.superseded())
                .filter(s -> s.step().stage().equals(scene.open().step().stage()))
                .flatMap(s -> s.reading().stream())
                .flatMap(r -> r.channel(Role.MANIFOLD).stream())
                .map(c -> c.unit().to(manifold.unit()).apply(c.value()))
                .findFirst();
    }

    private static Lane.TraceLine level(double value, long from, long to, int decimals) {
        return new Lane.TraceLine(
                Words.say("as found {0}", Numbers.fixed(value, decimals)),
                "",
                LineStyle.GHOST,
                new long[] {from, to},
                new double[] {value, value},
                Long.MAX_VALUE / 4);
    }

    /** Symmetric around the target, so that the target never moves; wide enough for the limits and the value of now. */
    private static ValueRange around(double target, Limit limit, double value) {
        double tolerance = limit.upper() - target;
        double away = Double.isFinite(value) ? Math.abs(value - target) * 1.1 : 0;
        // In steps, so that the axis does not creep with every sample.
        double half = tolerance * 0.7 * Math.max(2, Math.ceil(away / (tolerance * 0.7)));
        return new ValueRange(target - half, target + half);
    }
}
