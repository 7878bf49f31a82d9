package settlemark.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;

/** Lets a layer of ours be drawn by JFreeChart at its turn, clipped to the data area. */
final class LayerAnnotation extends AbstractXYAnnotation {
    private static final long serialVersionUID = 1L;

    private final transient Runnable layer;

    LayerAnnotation(Runnable layer) {
        this.layer = layer;
    }

    @Override
    public void draw(
            Graphics2D g,
            XYPlot plot,
            Rectangle2D dataArea,
            ValueAxis domainAxis,
            ValueAxis rangeAxis,
            int rendererIndex,
            PlotRenderingInfo info) {
        layer.run();
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
