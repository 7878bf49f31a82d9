package settlemark.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTick;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;

/** A number axis with exactly the ticks that it is given. */
final class PlacedAxis extends NumberAxis {
    private static final long serialVersionUID = 1L;

    private final transient List<Tick> ticks;

    PlacedAxis(double low, double high, List<Tick> ticks, ChartTheme theme, double scale) {
        this.ticks = ticks;
        setRange(low, high);
        setAutoTickUnitSelection(false);
        setTickLabelFont(Inter.regular(13 * scale));
        setTickLabelPaint(theme.ink2());
        setTickMarkPaint(theme.ink2());
        setAxisLineVisible(false);
        setTickMarkOutsideLength((float) (5 * scale));
    }

    @Override
    public List<NumberTick> refreshTicks(Graphics2D g, AxisState state, Rectangle2D area, RectangleEdge edge) {
        boolean across = RectangleEdge.isTopOrBottom(edge);
        return ticks.stream()
                .map(t -> new NumberTick(t.position(), t.label(), anchor(t, across), TextAnchor.CENTER, 0))
                .toList();
    }

    private static TextAnchor anchor(Tick tick, boolean across) {
        if (!across) {
            return TextAnchor.CENTER_RIGHT;
        }
        return tick.ending() ? TextAnchor.TOP_RIGHT : TextAnchor.TOP_CENTER;
    }

    @Override
    public boolean equals(Object other) {
        return this == other;
    }

    @Override
    public int hashCode() {
        return System.identityHashCode(this);
    }
}
