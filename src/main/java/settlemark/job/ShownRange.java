package settlemark.job;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * The two ends of a range as people read them, never for judging. What was written down by somebody has few digits and
 * stays as it is; what a conversion of units made long is rounded to three digits of its smaller end, or to two of its
 * width where that is finer. An end may be infinite.
 */
public record ShownRange(double lower, double upper) {
    /** A number with no more digits than this was written down as it is. */
    private static final int WRITTEN_DIGITS = 5;

    private static final int MOST_DECIMALS = 9;

    public static ShownRange of(double lower, double upper) {
        if (written(lower) && written(upper)) {
            return new ShownRange(lower, upper);
        }
        int decimals = Math.max(decimals(smaller(lower, upper), 3), decimals(upper - lower, 2));
        return new ShownRange(rounded(lower, decimals), rounded(upper, decimals));
    }

    private static boolean written(double end) {
        return !Double.isFinite(end)
                || BigDecimal.valueOf(end).stripTrailingZeros().precision() <= WRITTEN_DIGITS;
    }

    /** The smaller of the two that are numbers and not nothing. */
    private static double smaller(double lower, double upper) {
        double low = Math.abs(lower);
        double high = Math.abs(upper);
        if (!Double.isFinite(low) || low == 0) {
            return high;
        }
        return !Double.isFinite(high) || high == 0 ? low : Math.min(low, high);
    }

    private static int decimals(double size, int digits) {
        return Double.isFinite(size) && size > 0
                ? (int) Math.max(0, Math.min(MOST_DECIMALS, digits - 1 - Math.floor(Math.log10(size))))
                : 0;
    }

    private static double rounded(double end, int decimals) {
        return Double.isFinite(end)
                ? BigDecimal.valueOf(end)
                        .setScale(decimals, RoundingMode.HALF_EVEN)
                        .doubleValue()
                : end;
    }
}
