package settlemark.chart;

import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** What lies over the traces: staples, moments, dimension lines, headings, readings, and at last the labels. */
final class FrontLayer {
    /** More samples than a lane has columns: what covers words or leaves the lane is worse than any trace. */
    private static final int NO_PLACE = 100_000;

    /** Size of a difference's words at least. */
    private static final double LEAST = 13;

    private final LaneCanvas canvas;
    private final Pen pen;
    private final LabelPlacer labels;

    FrontLayer(LaneCanvas canvas, LabelPlacer labels) {
        this.canvas = canvas;
        this.pen = canvas.pen;
        this.labels = labels;
    }

    void draw() {
        canvas.lane.spans().forEach(this::staple);
        canvas.lane.readings().forEach(this::dot);
        canvas.lane.differences().forEach(this::difference);
        canvas.lane.headings().forEach(this::heading);
        canvas.lane.events().forEach(this::event);
        now();
        labels.place(canvas);
        canvas.lane.readings().forEach(this::readingWords);
    }

    private void staple(Lane.SettledSpan settled) {
        SpanShape.of(canvas, settled).ifPresent(shape -> {
            pen.g.setColor(pen.theme.ink());
            pen.g.setStroke(pen.stroke(2.4));
            pen.g.draw(shape.staple(pen));
            Rectangle2D shade = shape.shade();
            canvas.take(new Rectangle2D.Double(shade.getX(), shade.getY() - pen.px(2), shade.getWidth(), pen.px(12)));
        });
    }

    private boolean inView(long timeNanos) {
        return timeNanos >= canvas.view.fromNanos() && timeNanos <= canvas.view.toNanos();
    }

    private void dot(Lane.ReadingMark reading) {
        if (inView(reading.timeNanos())) {
            dot(canvas.x(reading.timeNanos()), canvas.y(reading.value()), pen.theme.ink(), 4);
        }
    }

    private void dot(double x, double y, Color color, double radiusPx) {
        double outer = pen.px(radiusPx + 2);
        double inner = pen.px(radiusPx);
        pen.g.setColor(pen.theme.sheet());
        pen.g.fill(new Ellipse2D.Double(x - outer, y - outer, 2 * outer, 2 * outer));
        pen.g.setColor(color);
        pen.g.fill(new Ellipse2D.Double(x - inner, y - inner, 2 * inner, 2 * inner));
        canvas.take(new Rectangle2D.Double(x - outer, y - outer, 2 * outer, 2 * outer));
    }

    private void readingWords(Lane.ReadingMark reading) {
        if (inView(reading.timeNanos()) && !reading.words().isEmpty()) {
            double x = canvas.x(reading.timeNanos());
            double y = canvas.y(reading.value());
            labels.beside(canvas, reading.words(), x, y);
        }
    }

    private void difference(Lane.Difference difference) {
        if (!inView(difference.timeNanos())) {
            return;
        }
        Rectangle2D area = canvas.area;
        double x = Math.min(canvas.x(difference.timeNanos()), area.getMaxX() - pen.px(8));
        double top = canvas.y(canvas.lane.range().clamp(difference.high())) + pen.px(4);
        double bottom = canvas.y(canvas.lane.range().clamp(difference.low())) - pen.px(4);
        if (bottom - top < pen.px(6)) {
            return;
        }
        pen.dimension(x, top, bottom);
        canvas.take(new Rectangle2D.Double(x - pen.px(6), top, pen.px(12), bottom - top));
        words(difference, x, (top + bottom) / 2, Math.max(LEAST, Math.min(28, (bottom - top) / pen.scale / 2.4)));
    }

    /**
     * At the left of a dimension line, or at its right; smaller where there is no room or the names of the traces would lose
     * theirs, and then without its note.
     */
    private void words(Lane.Difference difference, double x, double middle, double largest) {
        double left = x - pen.px(10) - canvas.area.getX();
        double right = canvas.area.getMaxX() - x - pen.px(10);
        double wide = Pen.width(difference.words(), Inter.semiBold(pen.px(largest)));
        double size = Math.max(LEAST, largest * Math.min(1, Math.max(left, right) / wide));
        Beside usual = beside(difference, size, true, left, right);
        Beside said = Stream.of(
                        usual,
                        beside(difference, size, false, left, right),
                        beside(difference, LEAST, false, left, right))
                .filter(b -> leavesNames(b.place(pen, x, middle)))
                .findFirst()
                .orElse(usual);
        if (said.words > said.room) {
            return;
        }
        sided(difference.words(), x, middle, said.font, pen.theme.ink(), said.toLeft);
        if (said.note > 0) {
            sided(difference.note(), x, middle + pen.px(19), said.small, pen.theme.ink2(), said.toLeft);
        }
        canvas.takeWords(said.place(pen, x, middle));
    }

    private Beside beside(Lane.Difference difference, double size, boolean noted, double left, double right) {
        Font font = Inter.semiBold(pen.px(size));
        Font small = Inter.regular(pen.px(Math.min(15, size)));
        double words = Pen.width(difference.words(), font);
        double note = noted ? Pen.width(difference.note(), small) : 0;
        boolean toLeft = Math.max(words, note) < left || left >= right;
        double room = toLeft ? left : right;
        return new Beside(font, small, size, words, note <= room ? note : 0, toLeft, room);
    }

    /** A difference's words as they would stand; widths in pixels of the area, 0 for a note that is left out. */
    private record Beside(Font font, Font small, double size, double words, double note, boolean toLeft, double room) {
        Rectangle2D place(Pen pen, double x, double middle) {
            double width = Math.max(words, note);
            double start = toLeft ? x - pen.px(10) - width : x - pen.px(6);
            double below = note > 0 ? 26 : 8;
            return new Rectangle2D.Double(start, middle - pen.px(size), width + pen.px(16), pen.px(size + below));
        }
    }

    private void sided(String words, double x, double baseline, Font font, Color color, boolean toLeft) {
        if (!words.isEmpty()) {
            double start = toLeft ? x - pen.px(10) - Pen.width(words, font) : x + pen.px(10);
            pen.text(words, start, baseline, font, color);
        }
    }

    private void heading(Lane.Heading heading) {
        Thinned trace = canvas.traces.get(heading.trace());
        int last = trace.size() - 1;
        while (last >= 0 && Double.isNaN(trace.value(last))) {
            last--;
        }
        if (last < 0) {
            return;
        }
        double x0 = canvas.xOfSeconds(trace.seconds(last));
        double y0 = canvas.y(trace.value(last));
        double x1 = Math.min(canvas.x(heading.timeNanos()), canvas.area.getMaxX() - pen.px(12));
        double y1 = canvas.y(canvas.lane.range().clamp(heading.value()));
        LineStyle style = canvas.lane.traces().get(heading.trace()).style();
        Color color = style.color(pen.theme);
        Path2D path = new Path2D.Double();
        path.moveTo(x0, y0);
        path.quadTo(x0 + (x1 - x0) * 0.45, y1, x1, y1);
        pen.g.setColor(color);
        pen.g.setStroke(pen.stroke(4, 4, 5));
        pen.g.draw(path);
        dot(x0, y0, color, 7);
        Mark.HEADING.draw(pen.g, x1 - pen.px(11), y1 - pen.px(11), pen.px(22), pen.theme);
        canvas.take(new Rectangle2D.Double(x1 - pen.px(11), y1 - pen.px(11), pen.px(22), pen.px(22)));
        headingDistance(heading, x1, y1);
    }

    private void headingDistance(Lane.Heading heading, double x, double y) {
        boolean above = heading.value() < heading.target();
        if (Double.isFinite(heading.target())) {
            double target = canvas.y(canvas.lane.range().clamp(heading.target()));
            double reach = Math.abs(target - y);
            if (reach > pen.px(26)) {
                pen.dimension(x, target + (above ? pen.px(2) : -pen.px(2)), y + (above ? -pen.px(12) : pen.px(12)));
            }
        }
        if (!heading.words().isEmpty()) {
            Font font = Inter.semiBold(pen.px(18));
            double width = Pen.width(heading.words(), font);
            double left = Math.min(x - width / 2, canvas.area.getMaxX() - width);
            double baseline = above || Double.isNaN(heading.target()) ? y + pen.px(29) : y - pen.px(17);
            pen.text(heading.words(), left, baseline, font, pen.theme.ink());
            canvas.takeWords(new Rectangle2D.Double(left, baseline - pen.px(18), width, pen.px(22)));
        }
    }

    private void event(Lane.EventMark event) {
        if (!inView(event.timeNanos())) {
            return;
        }
        double x = canvas.x(event.timeNanos());
        double near = pen.px(24);
        double[] extent = canvas.extentPx(event.trace(), x - near, x + near)
                .orElseGet(() -> new double[] {canvas.area.getCenterY(), canvas.area.getCenterY()});
        double room = canvas.area.getWidth() - pen.px(6);
        Font font = Pen.fitting(event.words(), Inter.regular(pen.px(14)), room);
        String words = Pen.cut(event.words(), font, room);
        double width = Pen.width(words, font);
        List<Rectangle2D> places = eventPlaces(extent, x, width);
        Rectangle2D place = places.stream()
                .filter(this::leavesNames)
                .findFirst()
                .orElse(labels.fits(canvas) ? null : places.get(0));
        if (place == null) {
            return; // The names of the traces come first; the moment is told beside the chart too.
        }
        boolean below = place.getY() > extent[1];
        double end = below ? place.getY() - pen.px(1) : place.getMaxY() + pen.px(1);
        double start = below ? extent[1] + pen.px(7) : extent[0] - pen.px(7);
        if (below ? end > start : end < start) {
            pen.line(x, start, x, end, pen.theme.ink(), 1.6);
        }
        pen.text(words, place.getX(), place.getMaxY() - pen.px(4), font, pen.theme.ink());
        canvas.takeWords(place);
        canvas.take(new Rectangle2D.Double(x - pen.px(2), Math.min(start, end), pen.px(4), Math.abs(end - start)));
    }

    /**
     * Places for the words, the one that covers least first: below the trace, then above it, in the middle before beside; and
     * at the bottom of the lane.
     */
    private List<Rectangle2D> eventPlaces(double[] extent, double x, double width) {
        double height = pen.px(18);
        List<Rectangle2D> places = new ArrayList<>();
        places.add(new Rectangle2D.Double(
                aligned(x, width, 0.5), canvas.area.getMaxY() - height - pen.px(2), width, height));
        for (double share : List.of(0.5, 1.0, 0.0)) {
            for (double down : List.of(56.0, 36.0, 76.0, 20.0, -46.0, -66.0, -30.0, -86.0, 6.0, -14.0)) {
                double y = down > 0 ? extent[1] + pen.px(down) : extent[0] + pen.px(down) - height;
                places.add(new Rectangle2D.Double(aligned(x, width, share), y, width, height));
            }
        }
        Map<Rectangle2D, Integer> covered = new IdentityHashMap<>();
        places.forEach(p -> covered.put(p, Math.min(NO_PLACE, covered(p))));
        places.sort(Comparator.comparing(covered::get));
        return places;
    }

    /** Whether the names of the traces still have their places beside words here. */
    private boolean leavesNames(Rectangle2D place) {
        int before = canvas.taken().size();
        canvas.takeWords(place);
        boolean leaves = labels.fits(canvas);
        canvas.giveBack(before);
        return leaves;
    }

    /** Left edge of words of which this share stands left of x, kept within the lane. */
    private double aligned(double x, double width, double share) {
        double beside = share == 0.5 ? 0 : share > 0.5 ? -pen.px(5) : pen.px(5);
        return Math.max(
                canvas.area.getX() + pen.px(2),
                Math.min(x - width * share + beside, canvas.area.getMaxX() - width - pen.px(2)));
    }

    private int covered(Rectangle2D place) {
        int points = canvas.pointsIn(place);
        return points + (canvas.free(place) ? 0 : NO_PLACE) + (canvas.area.contains(place) ? 0 : NO_PLACE);
    }

    private void now() {
        if (canvas.view.showsNow()) {
            double x = canvas.x(canvas.view.nowNanos());
            pen.line(x, canvas.area.getY(), x, canvas.area.getMaxY(), pen.theme.ink(), 2);
        }
    }
}
