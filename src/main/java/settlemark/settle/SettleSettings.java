package settlemark.settle;

import java.util.List;

/**
 * How much movement still counts as settled. The values are in the unit of the samples; {@link #scaled} changes it.
 *
 * @param kind of channel
 * @param driftLimit D: the remaining movement must stay within it
 * @param band B: half-width that swings may have
 * @param horizonSeconds H: how far ahead is looked
 * @param binSeconds b: width of a bin
 * @param windowSeconds the windows tried, shortest first
 * @param dwellSeconds how long the test must hold before it is declared
 * @param gapSeconds a longer pause in the data starts afresh
 * @param learnTimeConstant whether the approach's time constant may shorten the horizon
 * @param confidence one-sided confidence of the bounds, 0.95
 */
public record SettleSettings(
        SettleKind kind,
        double driftLimit,
        double band,
        double horizonSeconds,
        double binSeconds,
        List<Double> windowSeconds,
        double dwellSeconds,
        double gapSeconds,
        boolean learnTimeConstant,
        double confidence) {
    // They bound the memory and the work of a detector.
    private static final int MOST_WINDOWS = 8;
    private static final int FEWEST_BINS_IN_WINDOW = 8;
    private static final int MOST_BINS_IN_WINDOW = 120;

    public SettleSettings {
        windowSeconds = List.copyOf(windowSeconds);
        positive("drift limit", driftLimit);
        positive("band", band);
        positive("horizon", horizonSeconds);
        positive("bin", binSeconds);
        positive("gap", gapSeconds);
        if (!(dwellSeconds >= 0 && dwellSeconds < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("dwell time must not be negative, got " + dwellSeconds);
        }
        if (!(confidence > 0.5 && confidence < 1)) {
            throw new IllegalArgumentException("confidence must be above 0.5 and below 1, got " + confidence);
        }
        if (windowSeconds.isEmpty() || windowSeconds.size() > MOST_WINDOWS) {
            throw new IllegalArgumentException(
                    "there must be 1 to " + MOST_WINDOWS + " windows, got " + windowSeconds.size());
        }
        double shorter = FEWEST_BINS_IN_WINDOW * binSeconds;
        for (double window : windowSeconds) {
            if (!(window > shorter && window <= MOST_BINS_IN_WINDOW * binSeconds)) {
                throw new IllegalArgumentException("windows must grow, from over " + FEWEST_BINS_IN_WINDOW + " to "
                        + MOST_BINS_IN_WINDOW + " bins of " + binSeconds + " s, got " + windowSeconds);
            }
            shorter = window;
        }
    }

    /** Number of bins that the longest window can hold. */
    int mostBins() {
        int inWindows = (int) Math.ceil(windowSeconds.get(windowSeconds.size() - 1) / binSeconds) + 2;
        return learnTimeConstant ? Math.max(inWindows, MOST_BINS_IN_WINDOW) : inWindows;
    }

    /** Defaults for gas pressure in inches of water and temperatures in degrees Fahrenheit; this project's own. */
    public static SettleSettings defaults(SettleKind kind) {
        return switch (kind) {
            case GAS ->
                new SettleSettings(kind, 0.02, 0.05, 30, 1, List.of(20.0, 40.0, 60.0, 120.0), 3, 5, false, 0.95);
            case AIR ->
                new SettleSettings(kind, 0.5, 1.0, 180, 3, List.of(60.0, 90.0, 120.0, 360.0), 6, 15, true, 0.95);
            case STACK -> new SettleSettings(kind, 2, 4, 120, 3, List.of(60.0, 90.0, 120.0, 360.0), 6, 15, true, 0.95);
        };
    }

    /** The same settings for samples in another unit. @param factor target units per unit, positive */
    public SettleSettings scaled(double factor) {
        return new SettleSettings(
                kind,
                driftLimit * factor,
                band * factor,
                horizonSeconds,
                binSeconds,
                windowSeconds,
                dwellSeconds,
                gapSeconds,
                learnTimeConstant,
                confidence);
    }

    /**
     * The same limits and horizon for samples that come seldom: bins, windows and dwell grow until the shortest window holds
     * enough of them.
     */
    SettleSettings pacedFor(double periodSeconds) {
        double factor = Math.max(1, Math.ceil((FEWEST_BINS_IN_WINDOW + 1) * periodSeconds / windowSeconds.get(0)));
        return new SettleSettings(
                kind,
                driftLimit,
                band,
                horizonSeconds,
                binSeconds * factor,
                windowSeconds.stream().map(s -> s * factor).toList(),
                dwellSeconds * factor,
                gapSeconds,
                learnTimeConstant,
                confidence);
    }

    private static void positive(String what, double value) {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(what + " must be positive, got " + value);
        }
    }
}
