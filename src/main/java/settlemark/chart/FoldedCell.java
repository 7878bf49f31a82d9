package settlemark.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import settlemark.session.Span;

/** A small trace in a folded column or a table: its row's own axis, the settled span shaded, and nothing else. */
public final class FoldedCell {
    /** Traces are drawn thinner than in a full lane. */
    private static final double THINNER = 0.65;

    private final ChartTheme theme;
    private final double scale;

    /** @param scale multiplies the widths of lines */
    public FoldedCell(ChartTheme theme, double scale) {
        this.theme = theme;
        this.scale = scale;
    }

    /**
     * Draws into the cell and nowhere else.
     *
     * @param range the row's axis, the same in every column
     * @param fromNanos session time at the left edge
     * @param toNanos session time at the right edge
     * @param traces in the order drawn; gaps are left open
     * @param settled shaded over the full height
     * @param staple whether the staple stands at the top of each shade
     */
    public void draw(
            Graphics2D graphics,
            Rectangle2D cell,
            ValueRange range,
            long fromNanos,
            long toNanos,
            List<Lane.TraceLine> traces,
            List<Span> settled,
            boolean staple) {
        Graphics2D g = (Graphics2D) graphics.create();
        Quality.smooth(g);
        g.clip(cell);
        LaneView view = new LaneView(
                fromNanos, toNanos, -1, new TimeLabels.Since(fromNanos), List.of(Lane.of("", range, traces)), false);
        int columns =
                (int) Math.ceil(cell.getWidth() * Math.abs(g.getTransform().getScaleX()));
        List<Thinned> thinned = traces.stream()
                .map(t -> Thinned.of(t, fromNanos, toNanos, toNanos, columns))
                .toList();
        LaneCanvas canvas =
                new LaneCanvas(new Pen(g, theme, scale), view.lanes().get(0), view, cell, thinned);
        settled.stream().filter(s -> BackLayer.inView(view, s)).forEach(s -> shade(canvas, s, staple));
        plot(canvas).draw(g, cell, null, null, null);
        g.dispose();
    }

    private void shade(LaneCanvas canvas, Span span, boolean staple) {
        double left = Math.max(canvas.x(span.fromNanos()), canvas.area.getX());
        double right = Math.min(canvas.x(span.toNanos()), canvas.area.getMaxX());
        Pen pen = canvas.pen;
        double top = canvas.area.getY() + (staple ? pen.px(2) : 0);
        Rectangle2D shade =
                new Rectangle2D.Double(left, top, Math.max(right - left, pen.px(1)), canvas.area.getMaxY() - top);
        pen.fill(shade, theme.settled());
        if (staple) {
            pen.g.setColor(theme.ink());
            pen.g.setStroke(pen.stroke(1.8));
            pen.g.draw(new SpanShape(shade, true, true).staple(pen));
        }
    }

    private XYPlot plot(LaneCanvas canvas) {
        double seconds = (canvas.view.toNanos() - canvas.view.fromNanos()) / 1e9;
        ValueRange range = canvas.lane.range();
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        renderer.setDrawSeriesLineAsPath(true);
        for (int i = 0; i < canvas.lane.traces().size(); i++) {
            LineStyle style = canvas.lane.traces().get(i).style();
            renderer.setSeriesPaint(i, style.color(theme));
            renderer.setSeriesStroke(i, style.stroke(scale * THINNER));
        }
        XYPlot plot = new XYPlot(
                canvas.dashed(),
                new PlacedAxis(0, seconds, List.of(), theme, scale),
                new PlacedAxis(range.low(), range.high(), List.of(), theme, scale),
                renderer);
        Bare.make(plot);
        return plot;
    }
}
