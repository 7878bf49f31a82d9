package settlemark.chart;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** One lane while it is being drawn: its pixels, its thinned traces, and the places that labels must keep clear. */
final class LaneCanvas {
    final Pen pen;
    final Lane lane;
    final LaneView view;
    final Rectangle2D area;
    final List<Thinned> traces;
    private final List<Rectangle2D> taken = new ArrayList<>();
    private final List<Rectangle2D> words = new ArrayList<>();
    private final List<Double> edges = new ArrayList<>();

    LaneCanvas(Pen pen, Lane lane, LaneView view, Rectangle2D area, List<Thinned> traces) {
        this.pen = pen;
        this.lane = lane;
        this.view = view;
        this.area = area;
        this.traces = traces;
    }

    double x(long nanos) {
        return area.getX()
                + area.getWidth() * ((double) (nanos - view.fromNanos()) / (view.toNanos() - view.fromNanos()));
    }

    double xOfSeconds(double seconds) {
        return area.getX() + area.getWidth() * (seconds * 1e9 / (view.toNanos() - view.fromNanos()));
    }

    double secondsOfX(double x) {
        return (x - area.getX()) / area.getWidth() * ((view.toNanos() - view.fromNanos()) / 1e9);
    }

    double seconds(long nanos) {
        return (nanos - view.fromNanos()) / 1e9;
    }

    double y(double value) {
        ValueRange range = lane.range();
        return area.getMaxY() - area.getHeight() * ((value - range.low()) / range.span());
    }

    private double value(double y) {
        ValueRange range = lane.range();
        return range.low() + (area.getMaxY() - y) / area.getHeight() * range.span();
    }

    /** Top and bottom pixel of a trace between two pixels across, empty where it has nothing there. */
    Optional<double[]> extentPx(int trace, double fromX, double toX) {
        return traces.get(trace).extent(secondsOfX(fromX), secondsOfX(toX)).map(e -> new double[] {y(e[1]), y(e[0])});
    }

    /** The traces as they are drawn, cut into the dashes of their styles. */
    ThinnedTraces dashed() {
        List<Thinned> dashed = new ArrayList<>();
        for (int i = 0; i < traces.size(); i++) {
            dashed.add(Dashes.cut(traces.get(i), this, lane.traces().get(i).style()));
        }
        return new ThinnedTraces(dashed);
    }

    /** Notes a line across the lane, over which labels are read less well. */
    void edge(double y) {
        edges.add(y);
    }

    long edgesIn(Rectangle2D place) {
        return edges.stream()
                .filter(y -> y > place.getY() && y < place.getMaxY())
                .count();
    }

    void take(Rectangle2D place) {
        taken.add(place);
    }

    /** The same of words, which are worse to cover than any mark. */
    void takeWords(Rectangle2D place) {
        taken.add(place);
        words.add(place);
    }

    boolean coversWords(Rectangle2D place) {
        return words.stream().anyMatch(w -> w.intersects(place));
    }

    /** Gives back what was taken after so many. */
    void giveBack(int keep) {
        List<Rectangle2D> given = taken.subList(keep, taken.size());
        words.removeIf(w -> given.stream().anyMatch(g -> g == w));
        given.clear();
    }

    List<Rectangle2D> taken() {
        return taken;
    }

    boolean free(Rectangle2D place) {
        return area.contains(place) && taken.stream().noneMatch(t -> t.intersects(place));
    }

    /** Drawn points of all traces inside a rectangle. */
    int pointsIn(Rectangle2D place) {
        int count = 0;
        double from = secondsOfX(place.getX());
        double to = secondsOfX(place.getMaxX());
        double low = value(place.getMaxY());
        double high = value(place.getY());
        for (Thinned trace : traces) {
            count += trace.within(from, to, low, high);
        }
        return count;
    }
}
