package settlemark.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import settlemark.session.Span;

/** A small trace in a folded column or a table: its row's own axis, the settled span shaded, and nothing else. */
public final class FoldedCell {
    private final ChartTheme theme;
    private final double scale;

    /** @param scale multiplies the widths of lines */
    public FoldedCell(ChartTheme theme, double scale) {
        this.theme = theme;
        this.scale = scale;
    }

    /**
     * Draws into the cell and nowhere else.
     *
     * @param range the row's axis, the same in every column
     * @param fromNanos session time at the left edge
     * @param toNanos session time at the right edge
     * @param traces at reduced width
     * @param settled shaded over the full height; in those over which the staple is to stand, first
     */
    public void draw(
            Graphics2D graphics,
            Rectangle2D cell,
            ValueRange range,
            long fromNanos,
            long toNanos,
            List<Lane.TraceLine> traces,
            List<Span> settled) {}
}
