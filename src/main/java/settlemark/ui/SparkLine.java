package settlemark.ui;

import java.awt.Color;
import java.awt.Rectangle;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import settlemark.session.Spark;

/**
 * The least and the greatest of each half second of a minute, on the channel's own range but never finer than its limit.
 * It knows from where on it looks other than before, and draws only what is to be painted.
 */
final class SparkLine {
    private static final float STROKE = 1.3f;

    /** As far as a joint of the line can reach sideways, in pixels. */
    private static final double REACH = 8;

    /** Room that a range gets beyond what it must hold, so that it does not move with every sample. */
    private static final double ROOM = 0.1;

    /** A range is drawn anew where less of it than this is needed. */
    private static final double WORTH = 0.6;

    private final boolean exact;
    private Spark spark = new Spark(new double[0], new double[0]);
    private double bottom = Double.NaN;
    private double spread = Double.NaN;

    /** @param exact the range ends where the values do; else it has room, and moves seldom */
    SparkLine(boolean exact) {
        this.exact = exact;
    }

    /** Takes the newest; returns the first column that looks other than before, their number where none does. */
    int show(Spark newest) {
        Spark before = spark;
        spark = newest;
        if (range()) {
            return 0;
        }
        int columns = newest.lows().length;
        if (before.lows().length != columns) {
            return 0;
        }
        int first = 0;
        while (first < columns && same(before, newest, first)) {
            first++;
        }
        return first;
    }

    private static boolean same(Spark one, Spark other, int column) {
        return Double.compare(one.lows()[column], other.lows()[column]) == 0
                && Double.compare(one.highs()[column], other.highs()[column]) == 0;
    }

    /** Returns whether it moved. */
    private boolean range() {
        double low = spark.low();
        double high = spark.high();
        double least = Math.max(Math.abs(high) * 1e-3, 1e-9);
        double wanted = Math.max(high - low, least);
        boolean holds = low >= bottom && high <= bottom + spread && wanted >= spread * WORTH;
        if (!exact && holds || Double.isNaN(low)) {
            return false;
        }
        double before = bottom;
        double spreadBefore = spread;
        spread = wanted * (exact ? 1 : 1 + 2 * ROOM);
        bottom = (low + high - spread) / 2;
        return bottom != before || spread != spreadBefore;
    }

    /** What must be painted again of a line in this box, from a column on. */
    static Rectangle dirty(Rectangle2D box, int fromColumn) {
        double left = Math.max(box.getX(), x(box, fromColumn) - REACH);
        return new Rectangle2D.Double(left, box.getY() - 2, box.getMaxX() - left + 2, box.getHeight() + 4).getBounds();
    }

    private static double x(Rectangle2D box, int column) {
        return box.getX() + (column + 0.5) * box.getWidth() / Spark.COLUMNS;
    }

    /** Draws what the pen's clip lets through. */
    void draw(Pen pen, Rectangle2D box, Color color) {
        if (Double.isNaN(bottom)) {
            return;
        }
        Rectangle clip = pen.g.getClipBounds();
        double from = clip == null ? Double.NEGATIVE_INFINITY : clip.getX() - 2 * REACH;
        double to = clip == null ? Double.POSITIVE_INFINITY : clip.getMaxX() + 2 * REACH;
        Path2D path = new Path2D.Double();
        boolean on = false;
        for (int i = 0; i < spark.lows().length; i++) {
            double at = x(box, i);
            if (Double.isNaN(spark.lows()[i]) || at < from || at > to) {
                on = false;
                continue;
            }
            double low = y(box, spark.lows()[i]);
            if (on) {
                path.lineTo(at, low);
            } else {
                path.moveTo(at, low);
            }
            path.lineTo(at, y(box, spark.highs()[i]));
            on = true;
        }
        pen.outline(color, STROKE, path);
    }

    private double y(Rectangle2D box, double value) {
        return box.getMaxY() - (value - bottom) / spread * box.getHeight();
    }
}
