package settlemark.chart;

import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;

/** Takes away everything from a plot that we do not ask for, and fixes its margins, so that nothing moves. */
final class Bare {
    private Bare() {}

    static void make(XYPlot plot) {
        make(plot, 0, 0);
    }

    /** @param left room for the value axis; @param bottom room for the time axis */
    static void make(XYPlot plot, double left, double bottom) {
        plot.setInsets(RectangleInsets.ZERO_INSETS);
        plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
        plot.setBackgroundPaint(null);
        plot.setOutlineVisible(false);
        plot.setDomainGridlinesVisible(false);
        plot.setRangeGridlinesVisible(false);
        AxisSpace below = new AxisSpace();
        below.setBottom(bottom);
        plot.setFixedDomainAxisSpace(below);
        AxisSpace beside = new AxisSpace();
        beside.setLeft(left);
        plot.setFixedRangeAxisSpace(beside);
    }
}
