package settlemark.ui;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.geom.AffineTransform;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.util.ArrayList;
import java.util.List;
import settlemark.chart.ChartTheme;

/** A graphics with the look at hand: text by its baseline, outlines, dashes and hatching. Dispose it after use. */
final class Pen {
    final Graphics2D g;
    final Look look;

    Pen(Graphics graphics, Look look) {
        this.g = (Graphics2D) graphics.create();
        this.look = look;
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    }

    void dispose() {
        g.dispose();
    }

    ChartTheme theme() {
        return look.theme();
    }

    /** Draws text and returns where it ends. */
    double text(String words, Font font, Color color, double x, double baseline) {
        g.setFont(font);
        g.setColor(color);
        g.drawString(words, (float) x, (float) baseline);
        return x + Look.width(words, font);
    }

    /** The same in a room: smaller, then narrower where it is too long, and at last cut. */
    double fit(String words, Font font, Color color, double x, double baseline, double room) {
        Font fitting = Fitted.font(words, font, room, look.px(Look.AXIS));
        return text(Fitted.words(words, fitting, room), fitting, color, x, baseline);
    }

    void fitRight(String words, Font font, Color color, double right, double baseline, double room) {
        Font fitting = Fitted.font(words, font, room, look.px(Look.AXIS));
        textRight(Fitted.words(words, fitting, room), fitting, color, right, baseline);
    }

    void fitCentred(String words, Font font, Color color, double middle, double baseline, double room) {
        Font fitting = Fitted.font(words, font, room, look.px(Look.AXIS));
        textCentred(Fitted.words(words, fitting, room), fitting, color, middle, baseline);
    }

    void textRight(String words, Font font, Color color, double right, double baseline) {
        text(words, font, color, right - Look.width(words, font), baseline);
    }

    void textCentred(String words, Font font, Color color, double middle, double baseline) {
        text(words, font, color, middle - Look.width(words, font) / 2, baseline);
    }

    /** Text that reads from the bottom to the top, ending at the given top. */
    void textUpwards(String words, Font font, Color color, double baselineX, double top) {
        AffineTransform before = g.getTransform();
        g.translate(baselineX, top + Look.width(words, font));
        g.rotate(-Math.PI / 2);
        text(words, font, color, 0, 0);
        g.setTransform(before);
    }

    /** Draws wrapped lines and returns the baseline after the last. */
    double paragraph(String words, Font font, Color color, double x, double baseline, double width) {
        double y = baseline;
        for (String line : wrap(words, font, width)) {
            text(line, font, color, x, y);
            y += lineHeight(font);
        }
        return y;
    }

    static double lineHeight(Font font) {
        return font.getSize2D() * 1.28;
    }

    static List<String> wrap(String words, Font font, double width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : List.of(words.split(" ", -1))) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (line.isEmpty() || Look.width(longer, font) <= width) {
                line.setLength(0);
                line.append(longer);
            } else {
                lines.add(line.toString());
                line.setLength(0);
                line.append(word);
            }
        }
        lines.add(line.toString());
        return lines;
    }

    void fill(Color color, double x, double y, double width, double height) {
        g.setColor(color);
        int left = (int) x;
        int top = (int) y;
        int wide = (int) width;
        int high = (int) height;
        if (left == x && top == y && wide == width && high == height && onPixels()) {
            // The same pixels, without weighing how much of each is covered.
            g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_OFF);
            g.fillRect(left, top, wide, high);
            g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        } else {
            g.fill(new Rectangle2D.Double(x, y, width, height));
        }
    }

    /** Whether whole numbers are edges of pixels. */
    private boolean onPixels() {
        AffineTransform to = g.getTransform();
        return to.getType() <= AffineTransform.TYPE_TRANSLATION
                && to.getTranslateX() == Math.rint(to.getTranslateX())
                && to.getTranslateY() == Math.rint(to.getTranslateY());
    }

    /** Whether something of a box is to be painted at all. */
    boolean touches(Rectangle2D box) {
        Rectangle pixels = box.getBounds();
        return g.hitClip(pixels.x, pixels.y, pixels.width, pixels.height);
    }

    void fill(Color color, Shape shape) {
        g.setColor(color);
        g.fill(shape);
    }

    void outline(Color color, double stroke, Shape shape) {
        g.setColor(color);
        g.setStroke(new BasicStroke((float) stroke));
        g.draw(shape);
    }

    void line(Color color, double stroke, double x1, double y1, double x2, double y2) {
        outline(color, stroke, new Line2D.Double(x1, y1, x2, y2));
    }

    void dashed(Color color, double stroke, double dash, double gap, Shape shape) {
        Stroke before = g.getStroke();
        g.setColor(color);
        g.setStroke(new BasicStroke(
                (float) stroke,
                BasicStroke.CAP_BUTT,
                BasicStroke.JOIN_MITER,
                10f,
                new float[] {(float) dash, (float) gap},
                0f));
        g.draw(shape);
        g.setStroke(before);
    }

    /** A rounded box of the house: its outline lies inside the given rectangle. */
    static RoundRectangle2D box(double x, double y, double width, double height, double stroke, double radius) {
        return new RoundRectangle2D.Double(
                x + stroke / 2, y + stroke / 2, width - stroke, height - stroke, 2 * radius, 2 * radius);
    }

    /** Diagonal lines, clipped to a shape. */
    void hatch(Color color, double stroke, double spacing, Shape within) {
        Shape before = g.getClip();
        g.clip(within);
        g.setColor(color);
        g.setStroke(new BasicStroke((float) stroke));
        Rectangle2D area = within.getBounds2D();
        double height = area.getHeight();
        double first = Math.floor((area.getX() - height) / spacing) * spacing;
        for (double x = first; x < area.getMaxX() + spacing; x += spacing) {
            g.draw(new Line2D.Double(x, area.getMaxY() + 1, x + height + 2, area.getY() - 1));
        }
        g.setClip(before);
    }
}
