package settlemark.chart;

import java.util.List;
import org.jfree.data.xy.AbstractXYDataset;

/** The thinned traces of a lane as JFreeChart reads them; x in seconds after the left edge. */
final class ThinnedTraces extends AbstractXYDataset {
    private static final long serialVersionUID = 1L;

    private final transient List<Thinned> traces;

    ThinnedTraces(List<Thinned> traces) {
        this.traces = traces;
    }

    @Override
    public int getSeriesCount() {
        return traces.size();
    }

    @Override
    public Comparable<Integer> getSeriesKey(int series) {
        return series;
    }

    @Override
    public int getItemCount(int series) {
        return traces.get(series).size();
    }

    @Override
    public Number getX(int series, int item) {
        return getXValue(series, item);
    }

    @Override
    public Number getY(int series, int item) {
        return getYValue(series, item);
    }

    @Override
    public double getXValue(int series, int item) {
        return traces.get(series).seconds(item);
    }

    @Override
    public double getYValue(int series, int item) {
        return traces.get(series).value(item);
    }
}
