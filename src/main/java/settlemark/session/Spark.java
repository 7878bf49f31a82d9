package settlemark.session;

import settlemark.measure.Conversion;

/**
 * The last minute of a channel in columns of half a second, for a picture the size of a word; immutable. The arrays are not
 * copied and must not change.
 *
 * @param lows least value of each column, oldest first; NaN where there was none
 * @param highs greatest value of each
 */
public record Spark(double[] lows, double[] highs) {
    /** How much time a column holds. */
    public static final long COLUMN_NANOS = 500_000_000L;

    /** A minute. */
    public static final int COLUMNS = 120;

    public Spark {
        if (lows.length != highs.length) {
            throw new IllegalArgumentException(
                    "each column has a least and a greatest value, got " + lows.length + " and " + highs.length);
        }
    }

    /** The same in another unit; a scale that runs the other way exchanges least and greatest. */
    Spark in(Conversion change) {
        double[] low = new double[lows.length];
        double[] high = new double[highs.length];
        for (int i = 0; i < low.length; i++) {
            low[i] = change.apply(change.slope() > 0 ? lows[i] : highs[i]);
            high[i] = change.apply(change.slope() > 0 ? highs[i] : lows[i]);
        }
        return new Spark(low, high);
    }

    /** Least of all, NaN where there was no value. */
    public double low() {
        double low = Double.NaN;
        for (double value : lows) {
            low = Double.isNaN(value) || low < value ? low : value;
        }
        return low;
    }

    /** Greatest of all, NaN where there was no value. */
    public double high() {
        double high = Double.NaN;
        for (double value : highs) {
            high = Double.isNaN(value) || high > value ? high : value;
        }
        return high;
    }
}
