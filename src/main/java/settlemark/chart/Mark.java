package settlemark.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/** The marks that say a state by shape, drawn as vectors in a square box; in grey they are still told apart. */
public enum Mark {
    /** Settled: a bar with two feet, also the program's own mark. */
    STAPLE,
    /** Inside its limit, or done: a filled box with a check. */
    INSIDE,
    /** Its uncertainty reaches over the limit: a box half filled. */
    CLOSE,
    /** Outside its limit: an outlined box with a cross. */
    OUTSIDE,
    /** Not taken: an empty box. */
    NOT_TAKEN,
    /** Left out, with a reason: an empty box with a slash. */
    SKIPPED,
    /** The present: a filled triangle that points right. */
    NOW,
    /** Where a value is going: an open diamond. */
    HEADING,
    /** Something can go wrong: a triangle with a stroke. */
    CAUTION;

    /** Side of the box that the shapes are described in. */
    private static final double BOX = 20;

    /**
     * Draws the mark.
     *
     * @param x left edge of the box
     * @param y top edge of the box
     * @param size its side
     */
    public void draw(Graphics2D graphics, double x, double y, double size, ChartTheme theme) {
        Graphics2D g = boxed(graphics, x, y, size);
        g.setColor(this == OUTSIDE ? theme.fault() : theme.ink());
        g.setStroke(new BasicStroke(1.8f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER));
        switch (this) {
            case STAPLE -> staple(g);
            case INSIDE -> inside(g, theme);
            case CLOSE -> close(g, theme);
            case OUTSIDE -> outside(g);
            case NOT_TAKEN -> notTaken(g, theme);
            case SKIPPED -> skipped(g, theme);
            case NOW -> g.fill(polygon(4, 2, 18, 10, 4, 18));
            case HEADING -> heading(g, theme);
            case CAUTION -> caution(g);
        }
        g.dispose();
    }

    /**
     * Draws a health mark: square F, diamond C, triangle S, circle M (the open classes of NAMUR NE 107).
     *
     * @param letter F, C, S or M
     */
    public static void drawHealth(
            Graphics2D graphics, char letter, double x, double y, double size, Color color, ChartTheme theme) {
        Graphics2D g = boxed(graphics, x, y, size);
        g.setColor(color);
        g.setStroke(new BasicStroke(1.8f));
        boolean filled = letter == 'F';
        double baseline = 14;
        switch (letter) {
            case 'F' -> g.fill(new Rectangle2D.Double(1, 1, 18, 18));
            case 'C' -> g.draw(polygon(10, 0.5, 19.5, 10, 10, 19.5, 0.5, 10));
            case 'S' -> {
                g.draw(polygon(10, 1, 19.4, 18.5, 0.6, 18.5));
                baseline = 16.5;
            }
            case 'M' -> g.draw(new Ellipse2D.Double(1, 1, 18, 18));
            default -> throw new IllegalArgumentException("health is F, C, S or M, got " + letter);
        }
        g.setFont(Inter.semiBold(10));
        g.setColor(filled ? theme.sheet() : color);
        String text = String.valueOf(letter);
        double width =
                g.getFont().getStringBounds(text, g.getFontRenderContext()).getWidth();
        g.drawString(text, (float) (10 - width / 2), (float) baseline);
        g.dispose();
    }

    private static Graphics2D boxed(Graphics2D graphics, double x, double y, double size) {
        Graphics2D g = (Graphics2D) graphics.create();
        Quality.smooth(g);
        g.transform(new AffineTransform(size / BOX, 0, 0, size / BOX, x, y));
        return g;
    }

    private static void staple(Graphics2D g) {
        g.setStroke(new BasicStroke(2.4f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER));
        Path2D path = new Path2D.Double();
        path.moveTo(2, 15);
        path.lineTo(2, 6);
        path.lineTo(18, 6);
        path.lineTo(18, 15);
        g.draw(path);
    }

    private static void inside(Graphics2D g, ChartTheme theme) {
        g.fill(new Rectangle2D.Double(1, 1, 18, 18));
        g.setColor(theme.sheet());
        g.setStroke(new BasicStroke(2.4f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        Path2D check = new Path2D.Double();
        check.moveTo(5, 10.4);
        check.lineTo(8.6, 14);
        check.lineTo(15, 6.4);
        g.draw(check);
    }

    private static void close(Graphics2D g, ChartTheme theme) {
        g.setColor(theme.sheet());
        g.fill(new Rectangle2D.Double(1, 1, 18, 18));
        g.setColor(theme.ink());
        g.fill(polygon(1, 1, 19, 1, 1, 19));
        g.draw(new Rectangle2D.Double(1.9, 1.9, 16.2, 16.2));
    }

    private static void outside(Graphics2D g) {
        g.draw(new Rectangle2D.Double(1.9, 1.9, 16.2, 16.2));
        g.setStroke(new BasicStroke(2f));
        g.draw(new Line2D.Double(5.6, 5.6, 14.4, 14.4));
        g.draw(new Line2D.Double(14.4, 5.6, 5.6, 14.4));
    }

    private static void notTaken(Graphics2D g, ChartTheme theme) {
        g.setColor(theme.rule());
        g.draw(new Rectangle2D.Double(1.9, 1.9, 16.2, 16.2));
    }

    private static void skipped(Graphics2D g, ChartTheme theme) {
        notTaken(g, theme);
        g.setColor(theme.ink());
        g.draw(new Line2D.Double(3, 17, 17, 3));
    }

    private static void heading(Graphics2D g, ChartTheme theme) {
        Path2D diamond = polygon(10, 1.5, 18.5, 10, 10, 18.5, 1.5, 10);
        g.setColor(theme.sheet());
        g.fill(diamond);
        g.setColor(theme.ink());
        g.setStroke(new BasicStroke(2f));
        g.draw(diamond);
    }

    private static void caution(Graphics2D g) {
        g.setStroke(new BasicStroke(2f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        g.draw(polygon(10, 1.8, 18.8, 17.8, 1.2, 17.8));
        g.draw(new Line2D.Double(10, 7.5, 10, 12.2));
        g.fill(new Ellipse2D.Double(8.8, 14, 2.4, 2.4));
    }

    private static Path2D polygon(double... xy) {
        Path2D path = new Path2D.Double();
        path.moveTo(xy[0], xy[1]);
        for (int i = 2; i < xy.length; i += 2) {
            path.lineTo(xy[i], xy[i + 1]);
        }
        path.closePath();
        return path;
    }
}
