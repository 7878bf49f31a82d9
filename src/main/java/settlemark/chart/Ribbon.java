package settlemark.chart;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.font.FontRenderContext;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;

/** The hatched ribbon with the word SIMULATED, on everything that comes from the rig. */
public final class Ribbon {
    public static final String WORD = "SIMULATED";

    /** Distance between two words, in pixels at scale 1. */
    private static final double REPEAT_PX = 480;

    private Ribbon() {}

    /**
     * Draws the ribbon over the whole area, the word at least once, however narrow it is.
     *
     * @param scale multiplies the sizes of hatch and word
     */
    public static void draw(Graphics2D graphics, Rectangle2D area, ChartTheme theme, double scale) {
        draw(graphics, area, theme, scale, WORD);
    }

    /**
     * The same in another language.
     *
     * @param word that says simulated in it
     */
    public static void draw(Graphics2D graphics, Rectangle2D area, ChartTheme theme, double scale, String word) {
        Graphics2D g = (Graphics2D) graphics.create();
        Quality.smooth(g);
        g.clip(area);
        g.setColor(theme.fold());
        g.fill(area);
        hatch(g, area, theme, scale);
        Font font = fitting(word, g.getFontRenderContext(), area, scale);
        int words = Math.max(1, (int) (area.getWidth() / (REPEAT_PX * scale)));
        for (int i = 0; i < words; i++) {
            double center = area.getX() + area.getWidth() * (i + 0.5) / words;
            word(g, word, font, center, area, theme, scale);
        }
        g.dispose();
    }

    private static void hatch(Graphics2D g, Rectangle2D area, ChartTheme theme, double scale) {
        g.setColor(theme.ink2());
        g.setStroke(new BasicStroke((float) (1.2 * scale)));
        double height = area.getHeight();
        double step = 6 * scale;
        for (double x = area.getX() - height; x < area.getMaxX() + step; x += step) {
            g.draw(new Line2D.Double(x, area.getMaxY(), x + height, area.getY()));
        }
    }

    private static Font fitting(String word, FontRenderContext context, Rectangle2D area, double scale) {
        Font font = Inter.semiBold(Math.min(13 * scale, area.getHeight()));
        double width = font.getStringBounds(word, context).getWidth();
        double room = area.getWidth() - 4 * scale;
        return width <= room || room <= 0 ? font : font.deriveFont((float) (font.getSize2D() * room / width));
    }

    private static void word(
            Graphics2D g, String word, Font font, double center, Rectangle2D area, ChartTheme theme, double scale) {
        Rectangle2D bounds = font.getStringBounds(word, g.getFontRenderContext());
        double half = bounds.getWidth() / 2;
        double pad = 8 * scale;
        g.setColor(theme.fold());
        g.fill(new Rectangle2D.Double(center - half - pad, area.getY(), 2 * (half + pad), area.getHeight()));
        g.setColor(theme.ink());
        g.setFont(font);
        g.drawString(word, (float) (center - half), (float) (area.getCenterY() + font.getSize2D() * 0.36));
    }
}
