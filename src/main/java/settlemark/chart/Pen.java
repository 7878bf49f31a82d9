package settlemark.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/** Draws lines and letters in a theme's colours at a scale. */
final class Pen {
    /** Widths that do not depend on the screen, so that a drawing is laid out the same everywhere. */
    private static final FontRenderContext MEASURE = new FontRenderContext(null, true, true);

    /** Letters narrower than that are hard to tell. */
    static final double NARROWEST = 0.66;

    private static final String MORE = "\u2026";

    final Graphics2D g;
    final ChartTheme theme;
    final double scale;

    Pen(Graphics2D g, ChartTheme theme, double scale) {
        this.g = g;
        this.theme = theme;
        this.scale = scale;
    }

    double px(double atScaleOne) {
        return atScaleOne * scale;
    }

    static double width(String text, Font font) {
        return font.getStringBounds(text, MEASURE).getWidth();
    }

    void line(double x1, double y1, double x2, double y2, Color color, double widthPx, double... dashPx) {
        g.setColor(color);
        g.setStroke(stroke(widthPx, dashPx));
        g.draw(new Line2D.Double(x1, y1, x2, y2));
    }

    BasicStroke stroke(double widthPx, double... dashPx) {
        float width = (float) px(widthPx);
        if (dashPx.length == 0) {
            return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER);
        }
        float[] dash = new float[dashPx.length];
        for (int i = 0; i < dash.length; i++) {
            dash[i] = (float) px(dashPx[i]);
        }
        return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 1f, dash, 0f);
    }

    /** A font in which words have room: as narrow as can be read. */
    static Font fitting(String words, Font font, double room) {
        double width = width(words, font);
        return width <= room || width <= 0
                ? font
                : font.deriveFont(AffineTransform.getScaleInstance(Math.max(NARROWEST, room / width), 1));
    }

    /** Words that have room, cut where even narrow letters have none. */
    static String cut(String words, Font font, double room) {
        String text = words;
        while (!text.isEmpty() && width(text.equals(words) ? text : text + MORE, font) > room) {
            text = text.substring(0, text.offsetByCodePoints(text.length(), -1));
        }
        return text.equals(words) ? words : text.stripTrailing() + MORE;
    }

    /** Letters on a thin halo of the sheet, so that they can be read over lines and tints. */
    void text(String words, double x, double baseline, Font font, Color color) {
        g.setFont(font);
        Shape outline = font.createGlyphVector(MEASURE, words).getOutline((float) x, (float) baseline);
        g.setColor(theme.sheet());
        g.setStroke(new BasicStroke((float) px(3), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        g.draw(outline);
        g.setColor(color);
        g.drawString(words, (float) x, (float) baseline);
    }

    void fill(Rectangle2D area, Color color) {
        g.setColor(color);
        g.fill(area);
    }

    /** A vertical line with an open arrow head at both ends. */
    void dimension(double x, double y1, double y2) {
        double top = Math.min(y1, y2);
        double bottom = Math.max(y1, y2);
        double head = Math.min(px(6), (bottom - top) / 2);
        Path2D path = new Path2D.Double();
        path.moveTo(x, top);
        path.lineTo(x, bottom);
        path.moveTo(x - head * 0.7, top + head);
        path.lineTo(x, top);
        path.lineTo(x + head * 0.7, top + head);
        path.moveTo(x - head * 0.7, bottom - head);
        path.lineTo(x, bottom);
        path.lineTo(x + head * 0.7, bottom - head);
        g.setColor(theme.ink());
        g.setStroke(stroke(1.6));
        g.draw(path);
    }

    /** Diagonal hatch: nothing is known here. */
    void hatch(Rectangle2D area) {
        Graphics2D inside = (Graphics2D) g.create();
        inside.clip(area);
        inside.setColor(theme.rule());
        inside.setStroke(stroke(1.2));
        double step = px(6);
        double height = area.getHeight();
        for (double x = area.getX() - height; x < area.getMaxX(); x += step) {
            inside.draw(new Line2D.Double(x, area.getMaxY(), x + height, area.getY()));
        }
        inside.dispose();
    }
}
