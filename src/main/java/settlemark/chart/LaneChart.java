package settlemark.chart;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;

/**
 * Draws lanes on one time axis into any graphics, a screen's or a page's. Not thread-safe: one chart belongs
 * to one place on one screen, and remembers where it put its labels so that they do not jump.
 */
public final class LaneChart {
    private static final long MANY_SAMPLES = 200_000;

    private final ChartTheme theme;
    private final double scale;
    private final String simulated;
    private final LabelPlacer labels = new LabelPlacer();

    /** @param scale multiplies text and line widths, 1 at 96 dots an inch */
    public LaneChart(ChartTheme theme, double scale) {
        this(theme, scale, Ribbon.WORD);
    }

    /**
     * A chart in another language.
     *
     * @param scale multiplies text and line widths, 1 at 96 dots an inch
     * @param simulated says so in it
     */
    public LaneChart(ChartTheme theme, double scale, String simulated) {
        if (!(scale > 0)) {
            throw new IllegalArgumentException("a chart's scale must be above 0, got " + scale);
        }
        this.theme = theme;
        this.scale = scale;
        this.simulated = simulated;
    }

    /** Draws the whole chart with its axes into an area. Each trace costs at most four points a pixel column. */
    public void draw(Graphics2D graphics, Rectangle2D area, LaneView view) {
        Graphics2D g = (Graphics2D) graphics.create();
        draw(g, area, view, false, () -> g);
        g.dispose();
    }

    /**
     * The same into an image; with millions of samples its lanes are drawn at the same time.
     *
     * @param screenScale pixels of the image in one of the area
     */
    public void draw(BufferedImage image, double screenScale, Rectangle2D area, LaneView view) {
        Supplier<Graphics2D> graphics = () -> {
            Graphics2D g = image.createGraphics();
            g.scale(screenScale, screenScale);
            return g;
        };
        Graphics2D g = graphics.get();
        draw(g, area, view, samples(view) >= MANY_SAMPLES, graphics);
        g.dispose();
    }

    /** @param own a graphics for a lane where they are drawn together */
    private void draw(Graphics2D g, Rectangle2D area, LaneView view, boolean together, Supplier<Graphics2D> own) {
        Pen pen = pen(g, area);
        pen.fill(area, theme.sheet());
        Layout layout = Layout.of(area, view, scale);
        if (view.simulated()) {
            Ribbon.draw(g, layout.ribbon(), theme, scale, simulated);
        }
        List<List<Thinned>> traces = thinned(pen, view, layout);
        IntStream lanes = IntStream.range(0, view.lanes().size());
        if (together) {
            lanes.parallel().forEach(i -> {
                Graphics2D its = own.get();
                lane(pen(its, area), view, layout, i, traces.get(i));
                its.dispose();
            });
        } else {
            lanes.forEach(i -> lane(pen, view, layout, i, traces.get(i)));
        }
        between(pen, area, layout);
        now(pen, view, layout);
    }

    private Pen pen(Graphics2D g, Rectangle2D area) {
        Quality.smooth(g);
        g.clip(area);
        return new Pen(g, theme, scale);
    }

    private static long samples(LaneView view) {
        return view.lanes().stream()
                .flatMap(l -> l.traces().stream())
                .mapToLong(t -> t.values().length)
                .sum();
    }

    /** Where the values of a lane are drawn within an area, for aligning other things with it. */
    public Rectangle2D dataArea(Rectangle2D area, LaneView view, int lane) {
        return Layout.of(area, view, scale).lanes().get(lane);
    }

    /** The traces of each lane. Millions of samples are gone through by all cores, since a person waits for the frame. */
    private static List<List<Thinned>> thinned(Pen pen, LaneView view, Layout layout) {
        long end = view.nowNanos() >= 0 ? Math.min(view.nowNanos(), view.toNanos()) : view.toNanos();
        List<Supplier<Thinned>> work = new ArrayList<>();
        for (int i = 0; i < view.lanes().size(); i++) {
            // Device pixels: on a dense screen each of them is a column of its own.
            double width = layout.lanes().get(i).getWidth();
            int columns = (int) Math.ceil(width * Math.abs(pen.g.getTransform().getScaleX()));
            view.lanes()
                    .get(i)
                    .traces()
                    .forEach(t -> work.add(() -> Thinned.of(t, view.fromNanos(), view.toNanos(), end, columns)));
        }
        Stream<Supplier<Thinned>> stream = samples(view) < MANY_SAMPLES ? work.stream() : work.parallelStream();
        Iterator<Thinned> done = stream.map(Supplier::get).toList().iterator();
        return view.lanes().stream()
                .map(l -> l.traces().stream().map(t -> done.next()).toList())
                .toList();
    }

    private void lane(Pen pen, LaneView view, Layout layout, int index, List<Thinned> traces) {
        Rectangle2D data = layout.lanes().get(index);
        Lane lane = view.lanes().get(index);
        boolean last = index == view.lanes().size() - 1;
        LaneCanvas canvas = new LaneCanvas(pen, lane, view, data, traces);
        double bottom = last ? layout.axis().getHeight() : 0;
        double left = data.getX() - layout.ribbon().getX();
        plot(canvas, timeTicks(view, data, last), layout.valueTicks().get(index), left, bottom)
                .draw(
                        pen.g,
                        new Rectangle2D.Double(
                                data.getX() - left, data.getY(), left + data.getWidth(), data.getHeight() + bottom),
                        null,
                        null,
                        null);
        unit(pen, lane, data);
    }

    private List<Tick> timeTicks(LaneView view, Rectangle2D data, boolean last) {
        return last ? TimeTicks.fitting(view, data.getWidth() / scale) : List.of();
    }

    private XYPlot plot(LaneCanvas canvas, List<Tick> times, List<Tick> values, double left, double bottom) {
        double span = (canvas.view.toNanos() - canvas.view.fromNanos()) / 1e9;
        ValueRange range = canvas.lane.range();
        XYPlot plot = new XYPlot(
                canvas.dashed(),
                new PlacedAxis(0, span, times, theme, scale),
                new PlacedAxis(range.low(), range.high(), values, theme, scale),
                renderer(canvas));
        Bare.make(plot, left, bottom);
        plot.addAnnotation(new LayerAnnotation(() -> new FrontLayer(canvas, labels).draw()));
        return plot;
    }

    private XYLineAndShapeRenderer renderer(LaneCanvas canvas) {
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        // As one path, so that joins are clean and a page gets one shape a trace.
        renderer.setDrawSeriesLineAsPath(true);
        for (int i = 0; i < canvas.lane.traces().size(); i++) {
            LineStyle style = canvas.lane.traces().get(i).style();
            renderer.setSeriesPaint(i, style.color(theme));
            renderer.setSeriesStroke(i, style.stroke(scale));
        }
        renderer.addAnnotation(new LayerAnnotation(() -> new BackLayer(canvas).draw()), Layer.BACKGROUND);
        return renderer;
    }

    private void unit(Pen pen, Lane lane, Rectangle2D data) {
        if (!lane.unit().isEmpty()) {
            Font font = Inter.regular(pen.px(13));
            double x = data.getX() - pen.px(8) - Pen.width(lane.unit(), font);
            pen.text(lane.unit(), x, data.getY() + pen.px(11), font, theme.ink2());
        }
    }

    private static void between(Pen pen, Rectangle2D area, Layout layout) {
        for (int i = 1; i < layout.lanes().size(); i++) {
            double y =
                    (layout.lanes().get(i - 1).getMaxY() + layout.lanes().get(i).getY()) / 2;
            pen.line(area.getX(), y, area.getMaxX(), y, pen.theme.hair(), 1.6);
        }
    }

    /** Joins the lanes across the gap between them, and points at the axis. */
    private static void now(Pen pen, LaneView view, Layout layout) {
        if (!view.showsNow()) {
            return;
        }
        Rectangle2D first = layout.lanes().get(0);
        double share = (double) (view.nowNanos() - view.fromNanos()) / (view.toNanos() - view.fromNanos());
        double x = first.getX() + first.getWidth() * share;
        double bottom = layout.axis().getY();
        pen.line(x, first.getY(), x, bottom, pen.theme.ink(), 2);
        if (view.times() instanceof TimeLabels.Ago) {
            return; // the axis has the word there
        }
        Path2D triangle = new Path2D.Double();
        triangle.moveTo(x, bottom);
        triangle.lineTo(x + pen.px(7), bottom + pen.px(10));
        triangle.lineTo(x - pen.px(7), bottom + pen.px(10));
        triangle.closePath();
        pen.g.setColor(pen.theme.ink());
        pen.g.fill(triangle);
    }
}
