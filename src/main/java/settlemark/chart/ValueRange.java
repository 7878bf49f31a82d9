package settlemark.chart;

import java.util.List;

/**
 * The values that an axis spans.
 *
 * @param low smallest value, in the lane's unit
 * @param high largest value, above low
 */
public record ValueRange(double low, double high) {
    public ValueRange {
        if (!(low < high) || Double.isInfinite(low) || Double.isInfinite(high)) {
            throw new IllegalArgumentException("an axis runs from low to high, got " + low + " to " + high);
        }
    }

    /** The least range around some numbers, widened to a span and by a tenth; those not finite are passed over. */
    public static ValueRange around(double leastSpan, double... values) {
        return around(leastSpan, List.of(values));
    }

    /** The same around the numbers of several arrays. */
    public static ValueRange around(double leastSpan, List<double[]> parts) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double[] values : parts) {
            for (double value : values) {
                if (Double.isFinite(value)) {
                    low = Math.min(low, value);
                    high = Math.max(high, value);
                }
            }
        }
        if (low > high) {
            return new ValueRange(0, leastSpan > 0 ? leastSpan : 1);
        }
        double half = Math.max(Math.max(high - low, leastSpan), 1e-9) * 0.55;
        double middle = (low + high) / 2;
        return new ValueRange(middle - half, middle + half);
    }

    /** The least range that holds this and another. */
    public ValueRange and(ValueRange other) {
        return new ValueRange(Math.min(low, other.low), Math.max(high, other.high));
    }

    double span() {
        return high - low;
    }

    boolean holds(double value) {
        return value >= low && value <= high;
    }

    double clamp(double value) {
        return Math.max(low, Math.min(high, value));
    }
}
