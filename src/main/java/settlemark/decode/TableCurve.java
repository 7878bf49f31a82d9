package settlemark.decode;

import java.util.Arrays;
import settlemark.profile.Curve;

/** Straight lines between points. */
final class TableCurve implements BentCurve {
    private final double[] raws;
    private final double[] values;
    private final boolean rising;

    TableCurve(Curve.Table table) {
        raws = table.raws().stream().mapToDouble(Double::doubleValue).toArray();
        values = table.values().stream().mapToDouble(Double::doubleValue).toArray();
        rising = values[1] > values[0];
    }

    double firstRaw() {
        return raws[0];
    }

    double lastRaw() {
        return raws[raws.length - 1];
    }

    @Override
    public double apply(double raw) {
        if (Double.isNaN(raw)) {
            return Double.NaN;
        }
        if (raw < raws[0]) {
            return rising ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
        }
        if (raw > raws[raws.length - 1]) {
            return rising ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
        }
        int found = Arrays.binarySearch(raws, raw);
        return found >= 0 ? values[found] : between(raws, values, -found - 1, raw);
    }

    @Override
    public double inverse(double value, double hint) {
        int low = 0;
        int high = values.length - 1;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            boolean above = rising ? values[middle] <= value : values[middle] >= value;
            if (above) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double raw = between(values, raws, high, value);
        return Math.max(raws[0], Math.min(raws[raws.length - 1], raw));
    }

    @Override
    public boolean reaches(double value) {
        double first = values[0];
        double last = values[values.length - 1];
        return value >= Math.min(first, last) && value <= Math.max(first, last);
    }

    /** Above the middle of the values. */
    boolean isHigh(double value) {
        return value > (values[0] + values[values.length - 1]) / 2;
    }

    /** On the line that ends at a point. */
    private static double between(double[] from, double[] to, int end, double x) {
        double share = (x - from[end - 1]) / (from[end] - from[end - 1]);
        return share == 1 ? to[end] : to[end - 1] + share * (to[end] - to[end - 1]);
    }
}
