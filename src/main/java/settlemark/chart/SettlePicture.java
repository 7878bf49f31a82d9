package settlemark.chart;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import settlemark.session.Span;

/**
 * A recorded trace with the spans in which its channels were settled, the limits that held there, and below it every change of
 * mind with its reason, numbered as on the chart. One or two units, at most five channels of each.
 */
public final class SettlePicture {
    /** Axes that there is room for. */
    public static final int MOST_UNITS = 2;
    /** Channels of one unit that can be told apart. */
    public static final int MOST_CHANNELS = 5;

    private static final List<LineStyle> STYLES =
            List.of(LineStyle.UPSTREAM, LineStyle.ANSWERING, LineStyle.THIRD, LineStyle.FOURTH, LineStyle.FIFTH);
    private static final int MOST_REASONS = 60;
    private static final double LANE_PX = 330;
    private static final double LINE_PX = 20;
    private static final double MARGIN_PX = 16;
    private static final double NUMBER_PX = 13;
    private static final double FOOT_SHARE = 0.09;

    private final String title;
    private final List<Plotted> channels;
    private final double widthPx;
    private final LaneView view;
    private final List<Line> lines = new ArrayList<>();

    /**
     * A channel of the trace. The arrays are not copied and must not change.
     *
     * @param name as the trace names it
     * @param unit symbol
     * @param limit the drift limit, in that unit
     * @param timesNanos in order
     * @param values equally many
     * @param longestStepNanos longest time between neighbours that is no gap
     * @param changes of mind, in order
     */
    public record Plotted(
            String name,
            String unit,
            double limit,
            long[] timesNanos,
            double[] values,
            long longestStepNanos,
            List<Change> changes) {
        public Plotted {
            Objects.requireNonNull(unit);
            changes = List.copyOf(changes);
            if (timesNanos.length == 0 || timesNanos.length != values.length) {
                throw new IllegalArgumentException("channel " + name + " has " + timesNanos.length + " times and "
                        + values.length + " values; it needs one at least, and equally many");
            }
        }
    }

    /**
     * A channel settled, or was so no longer.
     *
     * @param timeNanos when
     * @param at the same as the trace writes it
     * @param settled which of both
     * @param value the reading, NaN where it was so no longer
     * @param words the reading with its uncertainty and unit, empty where it was so no longer
     * @param reason one line
     */
    public record Change(long timeNanos, String at, boolean settled, double value, String words, String reason) {}

    /** A line of the list under the chart; the number is 0 where it goes on from the one before. */
    private record Line(int number, String words) {}

    private record Numbered(int number, int channel, Change change) {}

    /** @throws IllegalArgumentException where there are too many units or channels, in words */
    public SettlePicture(String title, List<Plotted> channels, double widthPx) {
        this.title = title;
        this.channels = List.copyOf(channels);
        this.widthPx = widthPx;
        Map<String, List<Plotted>> byUnit = new LinkedHashMap<>();
        channels.forEach(
                c -> byUnit.computeIfAbsent(c.unit(), u -> new ArrayList<>()).add(c));
        if (byUnit.isEmpty() || byUnit.size() > MOST_UNITS) {
            throw new IllegalArgumentException("a picture has one or two axes, got the units " + byUnit.keySet()
                    + "; give the values of one kind in one unit, or make two pictures");
        }
        long from = channels.stream().mapToLong(c -> c.timesNanos()[0]).min().orElseThrow();
        long to = channels.stream().mapToLong(SettlePicture::end).max().orElseThrow();
        List<Lane> lanes = new ArrayList<>();
        byUnit.forEach((unit, its) -> lanes.add(lane(unit, its)));
        view = new LaneView(from, Math.max(to, from + 1_000_000_000L), -1, new TimeLabels.Since(0), lanes, false);
        numbered().forEach(this::list);
    }

    private static long end(Plotted channel) {
        return channel.timesNanos()[channel.timesNanos().length - 1];
    }

    private static Lane lane(String unit, List<Plotted> channels) {
        if (channels.size() > MOST_CHANNELS) {
            throw new IllegalArgumentException("a picture shows " + MOST_CHANNELS + " channels in " + unit + ", got "
                    + channels.size() + "; make two pictures");
        }
        List<Lane.TraceLine> traces = new ArrayList<>();
        List<Lane.SettledSpan> spans = new ArrayList<>();
        List<Lane.ReadingMark> readings = new ArrayList<>();
        ValueRange range = null;
        for (int i = 0; i < channels.size(); i++) {
            Plotted its = channels.get(i);
            traces.add(new Lane.TraceLine(
                    its.name(), "", STYLES.get(i), its.timesNanos(), its.values(), its.longestStepNanos()));
            ValueRange own = ValueRange.around(4 * its.limit(), its.values());
            range = range == null ? own : range.and(own);
            for (Span span : spans(its)) {
                spans.add(new Lane.SettledSpan(i, span));
            }
            for (Change change : its.changes()) {
                if (change.settled()) {
                    readings.add(new Lane.ReadingMark(i, change.timeNanos(), change.value(), ""));
                }
            }
        }
        return Lane.of(unit, withFoot(Objects.requireNonNull(range)), traces)
                .withSpans(spans)
                .withReadings(readings);
    }

    /** Room for the numbers under the traces. */
    private static ValueRange withFoot(ValueRange range) {
        return new ValueRange(range.low() - FOOT_SHARE * range.span(), range.high());
    }

    /** Where it was settled, to the end where it stayed so. */
    private static List<Span> spans(Plotted channel) {
        List<Span> spans = new ArrayList<>();
        long since = -1;
        for (Change change : channel.changes()) {
            if (since >= 0) {
                spans.add(new Span(since, change.timeNanos()));
            }
            since = change.settled() ? change.timeNanos() : -1;
        }
        if (since >= 0) {
            spans.add(new Span(since, Math.max(since, end(channel))));
        }
        return spans;
    }

    private List<Numbered> numbered() {
        List<Numbered> all = new ArrayList<>();
        for (int i = 0; i < channels.size(); i++) {
            for (Change change : channels.get(i).changes()) {
                all.add(new Numbered(0, i, change));
            }
        }
        all.sort(Comparator.comparingLong(n -> n.change().timeNanos()));
        List<Numbered> numbered = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            numbered.add(new Numbered(i + 1, all.get(i).channel(), all.get(i).change()));
        }
        return numbered;
    }

    private void list(Numbered item) {
        if (item.number() > MOST_REASONS) {
            if (item.number() == MOST_REASONS + 1) {
                lines.add(new Line(0, "... and more, which the table has"));
            }
            return;
        }
        Change change = item.change();
        String name = channels.size() > 1 ? channels.get(item.channel()).name() + " " : "";
        String said = change.settled()
                ? "settled at " + change.words() + ": " + change.reason()
                : "no longer settled: " + change.reason();
        wrap(item.number(), String.format(Locale.ROOT, "%s s  %s%s", change.at(), name, said));
    }

    private void wrap(int number, String words) {
        Font font = Inter.regular(NUMBER_PX);
        double room = widthPx - 3 * MARGIN_PX - 30;
        StringBuilder line = new StringBuilder();
        int shown = number;
        for (String word : words.split(" ", -1)) {
            if (!line.isEmpty() && Pen.width(line + " " + word, font) > room) {
                lines.add(new Line(shown, line.toString()));
                shown = 0;
                line.setLength(0);
                line.append("    ").append(word);
            } else {
                line.append(line.isEmpty() ? "" : " ").append(word);
            }
        }
        lines.add(new Line(shown, line.toString()));
    }

    /** What it needs. */
    public double heightPx() {
        return 3 * MARGIN_PX + LINE_PX + LANE_PX * view.lanes().size() + LINE_PX * (lines.size() + 1);
    }

    /** Draws it at the origin, {@link #heightPx} high. */
    public void draw(Graphics2D graphics, ChartTheme theme) {
        Graphics2D g = (Graphics2D) graphics.create();
        Quality.smooth(g);
        Pen pen = new Pen(g, theme, 1);
        pen.fill(new Rectangle2D.Double(0, 0, widthPx, heightPx()), theme.sheet());
        pen.text(title, MARGIN_PX, MARGIN_PX + 12, Inter.semiBold(16), theme.ink());
        Rectangle2D area = new Rectangle2D.Double(
                MARGIN_PX,
                MARGIN_PX + LINE_PX,
                widthPx - 2 * MARGIN_PX,
                LANE_PX * view.lanes().size());
        LaneChart chart = new LaneChart(theme, 1);
        chart.draw(g, area, view);
        for (int i = 0; i < view.lanes().size(); i++) {
            limits(pen, chart.dataArea(area, view, i), view.lanes().get(i));
        }
        numbers(pen, chart, area);
        reasons(pen, area.getMaxY() + MARGIN_PX);
        g.dispose();
    }

    /** Where the value may have been while it counted as settled: the drift limit on both sides of the reading. */
    private void limits(Pen pen, Rectangle2D data, Lane lane) {
        for (Plotted channel : channels) {
            if (!channel.unit().equals(lane.unit())) {
                continue;
            }
            List<Span> spans = spans(channel);
            List<Change> settled =
                    channel.changes().stream().filter(Change::settled).toList();
            for (int i = 0; i < spans.size(); i++) {
                double left = x(data, spans.get(i).fromNanos());
                double right = x(data, spans.get(i).toNanos());
                for (int side = -1; side <= 1; side += 2) {
                    double value = settled.get(i).value() + side * channel.limit();
                    double y = data.getMaxY()
                            - data.getHeight()
                                    * (value - lane.range().low())
                                    / lane.range().span();
                    if (y > data.getY() && y < data.getMaxY()) {
                        pen.line(left, y, right, y, pen.theme.ink2(), 1.2, 2, 3);
                    }
                }
            }
        }
    }

    private double x(Rectangle2D data, long timeNanos) {
        return data.getX()
                + data.getWidth() * (timeNanos - view.fromNanos()) / (double) (view.toNanos() - view.fromNanos());
    }

    /** The numbers of the list at the foot of the lanes; one that would lie on another is left out. */
    private void numbers(Pen pen, LaneChart chart, Rectangle2D area) {
        Font font = Inter.semiBold(NUMBER_PX);
        double[] taken = new double[view.lanes().size()];
        for (Numbered item : numbered()) {
            String unit = channels.get(item.channel()).unit();
            for (int i = 0; i < taken.length; i++) {
                Rectangle2D data = chart.dataArea(area, view, i);
                String words = String.valueOf(item.number());
                double width = Pen.width(words, font);
                double x = Math.min(x(data, item.change().timeNanos()), data.getMaxX() - width);
                if (view.lanes().get(i).unit().equals(unit) && x > taken[i] && item.number() <= MOST_REASONS) {
                    pen.line(x, data.getMaxY() - 8, x, data.getMaxY(), pen.theme.ink(), 1.4);
                    pen.text(words, x, data.getMaxY() - 10, font, pen.theme.ink());
                    taken[i] = x + width + 4;
                }
            }
        }
    }

    private void reasons(Pen pen, double top) {
        Font font = Inter.regular(NUMBER_PX);
        double y = top + LINE_PX;
        if (lines.isEmpty()) {
            pen.text("It never settled.", MARGIN_PX, y, font, pen.theme.ink());
        }
        for (Line line : lines) {
            if (line.number() > 0) {
                pen.text(String.valueOf(line.number()), MARGIN_PX, y, Inter.semiBold(NUMBER_PX), pen.theme.ink());
            }
            pen.text(line.words(), MARGIN_PX + 30, y, font, pen.theme.ink());
            y += LINE_PX;
        }
    }
}
