package settlemark.chart;

import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Rectangle2D;
import settlemark.session.Span;

/** What lies under the traces: limits, settled spans, gaps, and the value wanted. */
final class BackLayer {
    private final LaneCanvas canvas;
    private final Pen pen;
    private final boolean fills;

    BackLayer(LaneCanvas canvas) {
        this.canvas = canvas;
        this.pen = canvas.pen;
        this.fills = canvas.lane.traces().stream().allMatch(t -> t.style().bearsFills());
    }

    void draw() {
        canvas.lane.bands().forEach(this::band);
        canvas.lane.spans().forEach(this::span);
        for (int i = 0; i < canvas.traces.size(); i++) {
            canvas.traces.get(i).gaps().forEach(this::gap);
        }
        canvas.lane.targets().forEach(this::target);
        // The number of a limit stands elsewhere too: its words give way to all others.
        canvas.lane.bands().forEach(this::limitWords);
    }

    private void band(Lane.Band band) {
        Rectangle2D area = canvas.area;
        double top = canvas.y(canvas.lane.range().clamp(band.upper()));
        double bottom = canvas.y(canvas.lane.range().clamp(band.lower()));
        if (bottom <= top) {
            return;
        }
        if (fills) {
            pen.fill(new Rectangle2D.Double(area.getX(), top, area.getWidth(), bottom - top), pen.theme.band());
        }
        edge(band.upper());
        edge(band.lower());
    }

    private void edge(double value) {
        if (!canvas.lane.range().holds(value)) {
            return;
        }
        double y = canvas.y(value);
        canvas.edge(y);
        pen.line(canvas.area.getX(), y, canvas.area.getMaxX(), y, pen.theme.rule(), 1.6, 2, 4);
    }

    private void limitWords(Lane.Band band) {
        limitWords(band.upper(), band.upperWords());
        limitWords(band.lower(), band.lowerWords());
    }

    /** Below the edge at the left, or above it, or shorter at the right of what stands there; else left out. */
    private void limitWords(double value, String words) {
        if (words.isEmpty() || !canvas.lane.range().holds(value)) {
            return;
        }
        double y = canvas.y(value);
        for (double part : new double[] {1, 0.5}) {
            double room = room() * part;
            Font font = Pen.fitting(words, Inter.regular(pen.px(13)), room);
            String shown = Pen.cut(words, font, room);
            double width = Pen.width(shown, font);
            for (double top : new double[] {y + pen.px(5), y - pen.px(19)}) {
                for (double x :
                        new double[] {canvas.area.getX() + pen.px(8), canvas.area.getMaxX() - pen.px(4) - width}) {
                    Rectangle2D place = new Rectangle2D.Double(x, top, width, pen.px(17));
                    if (canvas.free(place)) {
                        pen.text(shown, x, top + pen.px(13), font, pen.theme.ink2());
                        canvas.takeWords(place);
                        return;
                    }
                }
            }
        }
    }

    private double room() {
        return canvas.area.getWidth() - pen.px(12);
    }

    private void span(Lane.SettledSpan settled) {
        SpanShape.of(canvas, settled).ifPresent(shape -> {
            if (fills) {
                pen.fill(shape.shade(), pen.theme.settled());
            } else {
                Rectangle2D shade = shape.shade();
                Color color = pen.theme.rule();
                pen.line(shade.getX(), shade.getY(), shade.getX(), shade.getMaxY(), color, 1.6, 2, 4);
                pen.line(shade.getMaxX(), shade.getY(), shade.getMaxX(), shade.getMaxY(), color, 1.6, 2, 4);
            }
        });
    }

    private void gap(Gap gap) {
        double left = Math.max(canvas.x(gap.fromNanos()), canvas.area.getX());
        double right = Math.min(canvas.x(gap.toNanos()), canvas.area.getMaxX());
        if (right - left < pen.px(3)) {
            return;
        }
        double one = Double.isNaN(gap.before()) ? gap.after() : gap.before();
        double other = Double.isNaN(gap.after()) ? one : gap.after();
        double top = Math.max(canvas.y(Math.max(one, other)) - pen.px(9), canvas.area.getY());
        double bottom = Math.min(canvas.y(Math.min(one, other)) + pen.px(9), canvas.area.getMaxY());
        if (bottom <= top) {
            return;
        }
        Rectangle2D hole = new Rectangle2D.Double(left, top, right - left, bottom - top);
        pen.hatch(hole);
        canvas.take(hole);
        gapWords(gap.words(), hole);
    }

    private void gapWords(String words, Rectangle2D hole) {
        Font font = Inter.semiBold(pen.px(13));
        double width = Pen.width(words, font);
        if (hole.getWidth() >= width + pen.px(8)) {
            pen.fill(
                    new Rectangle2D.Double(
                            hole.getCenterX() - width / 2 - pen.px(4),
                            hole.getY(),
                            width + pen.px(8),
                            hole.getHeight()),
                    pen.theme.sheet());
            pen.text(words, hole.getCenterX() - width / 2, hole.getCenterY() + pen.px(4.6), font, pen.theme.ink());
            return;
        }
        double x = Math.max(canvas.area.getX(), Math.min(hole.getCenterX() - width / 2, canvas.area.getMaxX() - width));
        Rectangle2D above = new Rectangle2D.Double(x, hole.getY() - pen.px(17), width, pen.px(16));
        Rectangle2D below = new Rectangle2D.Double(x, hole.getMaxY() + pen.px(1), width, pen.px(16));
        Rectangle2D place = canvas.free(above) || !canvas.free(below) ? above : below;
        pen.text(words, x, place.getMaxY() - pen.px(3.5), font, pen.theme.ink());
        canvas.takeWords(place);
    }

    private void target(Lane.Target target) {
        if (!canvas.lane.range().holds(target.value())) {
            return;
        }
        double y = canvas.y(target.value());
        pen.line(canvas.area.getX(), y, canvas.area.getMaxX(), y, pen.theme.ink(), 2.4);
        Font font = Pen.fitting(target.words(), Inter.semiBold(pen.px(18)), room());
        String words = Pen.cut(target.words(), font, room());
        Rectangle2D place = targetPlace(y, Pen.width(words, font));
        pen.text(words, place.getX(), place.getMaxY() - pen.px(12), font, pen.theme.ink());
        canvas.takeWords(place);
    }

    /** Above its line at the left, or where that is taken at the right, below, or below at the right. */
    private Rectangle2D targetPlace(double y, double width) {
        double left = canvas.area.getX() + pen.px(8);
        double right = canvas.area.getMaxX() - pen.px(8) - width;
        Rectangle2D first = new Rectangle2D.Double(left, y - pen.px(26), width, pen.px(30));
        for (double top : new double[] {y - pen.px(26), y - pen.px(2)}) {
            for (double x : new double[] {left, right}) {
                Rectangle2D place = new Rectangle2D.Double(x, top, width, pen.px(30));
                if (canvas.free(place)) {
                    return place;
                }
            }
        }
        return first;
    }

    /** The session times of a span that are in view, empty where none is. */
    static boolean inView(LaneView view, Span span) {
        return span.toNanos() > view.fromNanos() && span.fromNanos() < view.toNanos();
    }
}
