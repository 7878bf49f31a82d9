package settlemark.record;

import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import settlemark.chart.Lane;
import settlemark.chart.LaneChart;
import settlemark.chart.LaneGroup;
import settlemark.chart.LaneView;
import settlemark.job.StepState;
import settlemark.job.Verdict;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.session.JobRecord;
import settlemark.session.JobRecord.ReadingWindow;
import settlemark.session.Span;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/** Charts of the windows around the readings, with what the detector said below each. */
final class WindowCharts {
    private static final double GUTTER = 14;
    private static final double SCALE = 0.52;
    private static final long ROOM_NANOS = 4_500_000_000L;

    private final JobRecord record;
    private final Times times;
    private final WindowTraces traces;
    private final Flow flow;

    WindowCharts(JobRecord record, Flow flow) {
        this.record = record;
        this.times = new Times(record.header());
        this.traces = new WindowTraces(record);
        this.flow = flow;
    }

    /** One chart: windows of one step that touch, and the reading that stands last in it. */
    private record Picture(StepState step, List<ReadingWindow> windows) {
        StageReading reading() {
            return windows.get(windows.size() - 1).reading();
        }

        boolean severalLanes() {
            return groups().size() > 1;
        }

        List<LaneGroup> groups() {
            return LaneGroup.of(roles());
        }

        private List<Role> roles() {
            return Arrays.stream(Role.values())
                    .filter(r ->
                            windows.stream().anyMatch(w -> w.traces().stream().anyMatch(t -> t.role() == r)))
                    .toList();
        }

        List<Role> roles(LaneGroup group) {
            return roles().stream().filter(r -> LaneGroup.of(r) == group).toList();
        }

        long fromNanos() {
            return windows.stream().mapToLong(ReadingWindow::fromNanos).min().orElse(0);
        }

        long toNanos() {
            return windows.stream().mapToLong(ReadingWindow::toNanos).max().orElse(1);
        }
    }

    void write() throws IOException {
        List<Picture> small = new ArrayList<>();
        List<Picture> large = new ArrayList<>();
        for (StepState step : record.job().steps()) {
            for (Picture picture : pictures(step)) {
                (picture.severalLanes() ? large : small).add(picture);
            }
        }
        int lanes = large.stream().mapToInt(p -> p.groups().size()).max().orElse(2);
        rows(large, 2, 106 + (lanes - 2) * 34);
        // Never one alone in the last row.
        rows(small, small.size() % 4 == 1 || small.size() % 3 == 0 ? 3 : 4, 62);
    }

    private List<Picture> pictures(StepState step) {
        List<Picture> pictures = new ArrayList<>();
        List<ReadingWindow> run = new ArrayList<>();
        long end = 0;
        for (ReadingWindow window : traces.of(step)) {
            if (!run.isEmpty() && window.fromNanos() > end) {
                pictures.add(new Picture(step, List.copyOf(run)));
                run.clear();
            }
            run.add(window);
            end = window.toNanos();
        }
        if (!run.isEmpty()) {
            pictures.add(new Picture(step, List.copyOf(run)));
        }
        return pictures;
    }

    private void rows(List<Picture> pictures, int across, double height) throws IOException {
        for (int from = 0; from < pictures.size(); from += across) {
            row(pictures.subList(from, Math.min(pictures.size(), from + across)), across, height);
        }
    }

    private void row(List<Picture> pictures, int across, double height) throws IOException {
        double width = (Flow.WIDTH - (across - 1) * GUTTER) / across;
        List<List<String>> said = pictures.stream().map(p -> said(p, width)).toList();
        int most = said.stream().mapToInt(List::size).max().orElse(0);
        double total = 12 + height + 6 + most * Face.FINE.lineHeight();
        flow.need(total);
        for (int i = 0; i < pictures.size(); i++) {
            double x = Flow.LEFT + i * (width + GUTTER);
            Picture picture = pictures.get(i);
            flow.structure().in("H3", () -> head(picture, x, width));
            chart(picture, new Rectangle2D.Double(x, flow.y() + 4, width, height));
            List<String> lines = said.get(i);
            flow.structure().in("P", () -> said(lines, x, flow.y() + height + 12));
        }
        flow.down(height + 12 + (most - 1) * Face.FINE.lineHeight() + 17);
    }

    /** The limit that a reason ends with gets its unit, which holds for all its numbers. */
    private static String reason(ChannelReading channel) {
        String symbol =
                channel.unit().equals(Unit.CELSIUS) ? "K" : channel.unit().symbol();
        return channel.reason().replaceAll("limit (\u00B1?[\\d.]+)$", "limit $1 " + symbol);
    }

    private void said(List<String> lines, double x, double from) {
        double y = from;
        for (String line : lines) {
            flow.sheet().text(line, x, y, Face.FINE, Sheet.THEME.ink2());
            y += Face.FINE.lineHeight();
        }
    }

    private void head(Picture picture, double x, double width) {
        String title = picture.step().step().title() + (picture.step().superseded() ? " (repeated)" : "");
        String time = times.clock(picture.reading().timeNanos());
        double room = width - Face.SMALL.width(time) - 8;
        Face face = Face.STRONG.fitting(title, room);
        flow.sheet().text(face.cut(title, room), x, flow.y(), face);
        flow.sheet().right(time, x + width, flow.y(), Face.SMALL, Sheet.THEME.ink2());
    }

    private static List<String> said(Picture picture, double width) {
        List<String> lines = new ArrayList<>();
        StageReading reading = picture.reading();
        for (ChannelReading channel : reading.channels()) {
            lines.addAll(Face.FINE.wrap(Figures.subject(channel.role().word()) + ": " + reason(channel), width));
        }
        if (reading.byHand()) {
            lines.addAll(Face.FINE.wrap("taken by hand: " + reading.handReason(), width));
        }
        return lines;
    }

    private void chart(Picture picture, Rectangle2D area) throws IOException {
        List<Lane> lanes = new ArrayList<>();
        picture.groups().forEach(group -> lanes.add(lane(picture, group)));
        if (!lanes.isEmpty() && picture.fromNanos() < picture.toNanos()) {
            // A little room on the right, so that the dot of the reading is whole; not enough to pass for a gap.
            long room = Math.min((picture.toNanos() - picture.fromNanos()) / 40, ROOM_NANOS);
            LaneView view = new LaneView(
                    picture.fromNanos(),
                    picture.toNanos() + room,
                    -1,
                    times.labels(),
                    lanes,
                    record.header().simulated());
            new LaneChart(Sheet.THEME, SCALE).draw(flow.sheet().figure(inWords(picture)), area, view);
        }
    }

    /** The chart for those who do not see it. */
    private String inWords(Picture picture) {
        List<String> parts = new ArrayList<>();
        for (ChannelReading channel : picture.reading().channels()) {
            parts.add(channel.role().word() + " "
                    + Figures.value(channel.value(), Figures.decimals(channel.expandedUncertainty())) + " "
                    + channel.unit().symbol()
                    + (channel.settled()
                            ? ", settled from " + times.clock(channel.fromNanos()) + " to "
                                    + times.clock(channel.toNanos())
                            : ", not settled"));
        }
        return (record.header().simulated() ? "SIMULATED. " : "") + "Chart of "
                + picture.step().step().title()
                + " from " + times.clock(picture.fromNanos()) + " to " + times.clock(picture.toNanos()) + ": "
                + String.join("; ", parts) + ".";
    }

    private Lane lane(Picture picture, LaneGroup group) {
        List<Role> roles = picture.roles(group);
        boolean first = group == picture.groups().get(0);
        List<Lane.TraceLine> lines =
                roles.stream().map(r -> joined(picture.windows(), r)).toList();
        List<Verdict> verdicts = standing(picture)
                ? roles.stream()
                        .flatMap(r -> StageColumns.verdict(picture.step(), r.word()).stream())
                        .toList()
                : List.of();
        double[] ends = verdicts.stream()
                .filter(v -> !v.subject().equals(Role.INLET.word()))
                .flatMapToDouble(
                        v -> DoubleStream.of(v.limit().lower(), v.limit().upper()))
                .toArray();
        String unit = picture.windows().stream()
                .flatMap(w -> w.traces().stream())
                .filter(t -> t.role() == roles.get(0))
                .map(t -> t.unit().symbol())
                .findFirst()
                .orElse("");
        Lane lane = Lane.of(unit, traces.range(lines, roles, ends), lines)
                .withBands(verdicts.stream()
                        .map(v -> new Lane.Band(v.limit().lower(), v.limit().upper()))
                        .toList())
                .withSpans(spans(picture, roles))
                .withReadings(readings(picture, roles))
                .withEvents(first ? events(picture, roles) : List.of());
        return group == LaneGroup.AIR ? rise(picture).map(lane::withDifference).orElse(lane) : lane;
    }

    /** True where the picture shows the reading that the step's verdicts are about. */
    private static boolean standing(Picture picture) {
        return picture.step().reading().filter(picture.reading()::equals).isPresent();
    }

    /** The traces of windows that overlap as one. */
    private static Lane.TraceLine joined(List<ReadingWindow> windows, Role role) {
        long[] allTimes = new long[0];
        double[] allValues = new double[0];
        for (ReadingWindow window : windows) {
            for (JobRecord.RoleTrace trace : window.traces()) {
                if (trace.role() == role) {
                    long last = allTimes.length == 0 ? Long.MIN_VALUE : allTimes[allTimes.length - 1];
                    int from = 0;
                    while (from < trace.timesNanos().length && trace.timesNanos()[from] <= last) {
                        from++;
                    }
                    allTimes = join(allTimes, trace.timesNanos(), from);
                    allValues = join(allValues, trace.values(), from);
                }
            }
        }
        return WindowTraces.line(role, allTimes, allValues);
    }

    private static long[] join(long[] first, long[] second, int from) {
        long[] all = Arrays.copyOf(first, first.length + second.length - from);
        System.arraycopy(second, from, all, first.length, second.length - from);
        return all;
    }

    private static double[] join(double[] first, double[] second, int from) {
        double[] all = Arrays.copyOf(first, first.length + second.length - from);
        System.arraycopy(second, from, all, first.length, second.length - from);
        return all;
    }

    private static List<Lane.SettledSpan> spans(Picture picture, List<Role> roles) {
        List<Lane.SettledSpan> spans = new ArrayList<>();
        for (ChannelReading channel : picture.reading().channels()) {
            int trace = roles.indexOf(channel.role());
            if (trace >= 0 && channel.settled() && channel.fromNanos() < channel.toNanos()) {
                spans.add(new Lane.SettledSpan(trace, new Span(channel.fromNanos(), channel.toNanos())));
            }
        }
        return spans;
    }

    private static List<Lane.ReadingMark> readings(Picture picture, List<Role> roles) {
        List<Lane.ReadingMark> marks = new ArrayList<>();
        for (ReadingWindow window : picture.windows()) {
            boolean last = window.reading().equals(picture.reading());
            for (ChannelReading channel : window.reading().channels()) {
                int trace = roles.indexOf(channel.role());
                boolean shown = last || channel.role() == Role.MANIFOLD;
                if (trace >= 0 && shown) {
                    String value = Figures.value(channel.value(), Figures.decimals(channel.expandedUncertainty()));
                    String words = last ? "" : window.reading().purpose() + " " + value;
                    marks.add(new Lane.ReadingMark(
                            trace, window.reading().timeNanos(), channel.value(), Printable.of(words)));
                }
            }
        }
        return marks;
    }

    private static List<Lane.EventMark> events(Picture picture, List<Role> roles) {
        int trace = Math.max(0, roles.indexOf(Role.MANIFOLD));
        return picture.step().marks().stream()
                .filter(m -> m.timeNanos() >= picture.fromNanos() && m.timeNanos() <= picture.toNanos())
                .map(m -> new Lane.EventMark(trace, m.timeNanos(), Printable.of(m.words())))
                .toList();
    }

    private static Optional<Lane.Difference> rise(Picture picture) {
        StageReading reading = picture.reading();
        if (!standing(picture)) {
            return Optional.empty();
        }
        return StageColumns.verdict(picture.step(), StageColumns.RISE)
                .flatMap(v -> reading.channel(Role.SUPPLY)
                        .flatMap(s -> reading.channel(Role.RETURN)
                                .map(r -> new Lane.Difference(
                                        r.value(),
                                        s.value(),
                                        picture.toNanos() - (picture.toNanos() - picture.fromNanos()) / 30,
                                        "rise " + Figures.value(v.value(), Figures.decimals(v.expandedUncertainty())),
                                        ""))));
    }
}
