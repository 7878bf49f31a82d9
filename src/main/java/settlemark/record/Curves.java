package settlemark.record;

import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.util.ArrayList;
import java.util.List;

/**
 * A glyph's outline in the quadratic curves that TrueType knows, made from the cubic ones of PostScript outlines.
 */
final class Curves {
    /** A thousandth of the em is finer than any printer; the outline stays within a fifth of that. */
    private static final double TOLERANCE = 0.4;

    private final List<List<Point>> contours = new ArrayList<>();
    private List<Point> contour = new ArrayList<>();
    private double x;
    private double y;

    private Curves() {}

    /** A point in font units, on the curve or a control point beside it. */
    record Point(int x, int y, boolean on) {
        /** The same place in the same part; what a record's own equality is made of is slow where it runs seldom. */
        boolean at(Point other) {
            return x == other.x && y == other.y && on == other.on;
        }
    }

    static List<List<Point>> of(Path2D outline) {
        Curves curves = new Curves();
        double[] c = new double[6];
        for (PathIterator i = outline.getPathIterator(null); !i.isDone(); i.next()) {
            switch (i.currentSegment(c)) {
                case PathIterator.SEG_MOVETO -> curves.begin(c[0], c[1]);
                case PathIterator.SEG_LINETO -> curves.on(c[0], c[1]);
                case PathIterator.SEG_QUADTO -> curves.quadratic(c[0], c[1], c[2], c[3]);
                case PathIterator.SEG_CUBICTO -> curves.cubic(c);
                default -> curves.end();
            }
        }
        curves.end();
        return curves.contours;
    }

    private void begin(double atX, double atY) {
        end();
        on(atX, atY);
    }

    private void on(double atX, double atY) {
        contour.add(new Point((int) Math.round(atX), (int) Math.round(atY), true));
        x = atX;
        y = atY;
    }

    private void quadratic(double controlX, double controlY, double toX, double toY) {
        contour.add(new Point((int) Math.round(controlX), (int) Math.round(controlY), false));
        on(toX, toY);
    }

    /**
     * Cut into n equal parts, each replaced by the quadratic whose control point is (3 c1 - p0 + 3 c2 - p3) / 4; its
     * distance from the cubic is at most sqrt(3)/36 |p3 - 3 c2 + 3 c1 - p0| / n^3 (from the third derivative, which is
     * constant along a cubic).
     */
    private void cubic(double[] c) {
        double x0 = x;
        double y0 = y;
        double bend = Math.hypot(c[4] - 3 * c[2] + 3 * c[0] - x0, c[5] - 3 * c[3] + 3 * c[1] - y0);
        int n = Math.max(1, (int) Math.ceil(Math.cbrt(Math.sqrt(3) / 36 * bend / TOLERANCE)));
        for (int i = 0; i < n; i++) {
            double from = (double) i / n;
            double to = (double) (i + 1) / n;
            double third = (to - from) / 3;
            double ax = at(x0, c[0], c[2], c[4], from);
            double ay = at(y0, c[1], c[3], c[5], from);
            double bx = at(x0, c[0], c[2], c[4], to);
            double by = at(y0, c[1], c[3], c[5], to);
            double firstX = ax + third * slope(x0, c[0], c[2], c[4], from);
            double firstY = ay + third * slope(y0, c[1], c[3], c[5], from);
            double secondX = bx - third * slope(x0, c[0], c[2], c[4], to);
            double secondY = by - third * slope(y0, c[1], c[3], c[5], to);
            quadratic((3 * firstX - ax + 3 * secondX - bx) / 4, (3 * firstY - ay + 3 * secondY - by) / 4, bx, by);
        }
    }

    private static double at(double p0, double p1, double p2, double p3, double t) {
        double u = 1 - t;
        return u * u * u * p0 + 3 * u * u * t * p1 + 3 * u * t * t * p2 + t * t * t * p3;
    }

    private static double slope(double p0, double p1, double p2, double p3, double t) {
        double u = 1 - t;
        return 3 * (u * u * (p1 - p0) + 2 * u * t * (p2 - p1) + t * t * (p3 - p2));
    }

    private void end() {
        int size = contour.size();
        // A contour closes by itself; its first point again would be a side of no length.
        if (size > 1 && contour.get(0).at(contour.get(size - 1))) {
            contour.remove(size - 1);
        }
        if (contour.size() > 2) {
            contours.add(contour);
        }
        contour = new ArrayList<>();
    }
}
