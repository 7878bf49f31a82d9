package settlemark.settle;

import java.util.List;

/**
 * What a person has set otherwise than the defaults of a kind of channel; NaN, or an empty list, where they have not.
 *
 * @param driftLimit in inches of water of a gas pressure, in degrees Fahrenheit of a temperature
 * @param band half-width that swings may have, in the same unit
 * @param horizonSeconds how far ahead is looked
 * @param windowSeconds the windows tried, shortest first
 * @param dwellSeconds how long the test must hold
 * @param huntingSeconds period of the slowest hunting that must not be taken for drift; it changes nothing, but the windows
 *     are held to it
 */
public record SettleAdjustment(
        double driftLimit,
        double band,
        double horizonSeconds,
        List<Double> windowSeconds,
        double dwellSeconds,
        double huntingSeconds) {
    /** Nothing is set. */
    public static final SettleAdjustment NONE =
            new SettleAdjustment(Double.NaN, Double.NaN, Double.NaN, List.of(), Double.NaN, Double.NaN);

    /** @throws IllegalArgumentException where a number is not positive (of the dwell time, negative), or the windows do not grow */
    public SettleAdjustment {
        windowSeconds = List.copyOf(windowSeconds);
        positive("drift", driftLimit);
        positive("band", band);
        positive("horizon", horizonSeconds);
        positive("hunting", huntingSeconds);
        if (dwellSeconds < 0 || Double.isInfinite(dwellSeconds)) {
            throw new IllegalArgumentException("dwell must not be negative, got " + dwellSeconds + "; 0 is the least");
        }
        double shorter = 0;
        for (double window : windowSeconds) {
            if (!(window > shorter && window < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("windows must be seconds, the shortest first, got " + windowSeconds
                        + "; write them like 20,40,60");
            }
            shorter = window;
        }
    }

    private static void positive(String what, double value) {
        if (value <= 0 || Double.isInfinite(value)) {
            throw new IllegalArgumentException(what + " must be above 0, got " + value);
        }
    }

    /** Settings with what is set here, the rest as it was. In the defaults' units. */
    public SettleSettings of(SettleSettings base) {
        return new SettleSettings(
                base.kind(),
                either(driftLimit, base.driftLimit()),
                either(band, base.band()),
                either(horizonSeconds, base.horizonSeconds()),
                base.binSeconds(),
                windowSeconds.isEmpty() ? base.windowSeconds() : windowSeconds,
                either(dwellSeconds, base.dwellSeconds()),
                base.gapSeconds(),
                base.learnTimeConstant(),
                base.confidence());
    }

    /** What is set here or, where it is not, there. */
    public SettleAdjustment over(SettleAdjustment other) {
        return new SettleAdjustment(
                either(driftLimit, other.driftLimit),
                either(band, other.band),
                either(horizonSeconds, other.horizonSeconds),
                windowSeconds.isEmpty() ? other.windowSeconds : windowSeconds,
                either(dwellSeconds, other.dwellSeconds),
                either(huntingSeconds, other.huntingSeconds));
    }

    private static double either(double set, double otherwise) {
        return Double.isNaN(set) ? otherwise : set;
    }
}
