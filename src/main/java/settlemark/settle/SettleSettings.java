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
    public SettleSettings {
        windowSeconds = List.copyOf(windowSeconds);
    }

    /** Defaults for gas pressure in inches of water and temperatures in degrees Fahrenheit; this project's own. */
    public static SettleSettings defaults(SettleKind kind) {
        return switch (kind) {
            case GAS -> new SettleSettings(kind, 0.02, 0.05, 30, 1, List.of(20.0, 40.0, 60.0), 3, 5, false, 0.95);
            case AIR ->
                new SettleSettings(kind, 0.5, 1.0, 180, 3, List.of(60.0, 90.0, 120.0, 180.0), 6, 15, true, 0.95);
            case STACK -> new SettleSettings(kind, 2, 4, 120, 3, List.of(60.0, 90.0, 120.0, 180.0), 6, 15, true, 0.95);
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
}
