package settlemark.job;

import java.util.Locale;
import java.util.Optional;
import settlemark.measure.Unit;

/**
 * Whether the inlet keeps climbing with nothing firing. A regulator that locks up stands still within seconds; one whose
 * seat leaks climbs for minutes.
 */
final class LockUpClimb {
    /** The first look, after the hose is on and the regulator has shut; this program's own. */
    private static final double CALM_SECONDS = 20;

    private static final double LONGER_SECONDS = 40;
    /** Rise that is said, inH2O; this program's own, ten times a gauge's usual resolution and noise. */
    private static final double CLIMB_IN_H2O = 0.15;

    private long fromNanos = -1;
    private double from;
    private boolean said;

    /**
     * The next inlet of an armed step.
     *
     * @return what there is to say, once
     */
    Optional<String> see(long armedNanos, long timeNanos, double value, Unit unit) {
        if (said || Double.isNaN(value) || (timeNanos - armedNanos) / 1e9 < CALM_SECONDS) {
            return Optional.empty();
        }
        if (fromNanos < armedNanos) {
            fromNanos = timeNanos;
            from = value;
            return Optional.empty();
        }
        double seconds = (timeNanos - fromNanos) / 1e9;
        double climbed = Unit.INCH_OF_WATER.to(unit).inverse().applyDifference(value - from);
        if (climbed < CLIMB_IN_H2O || seconds < LONGER_SECONDS) {
            return Optional.empty();
        }
        said = true;
        return Optional.of(String.format(
                Locale.ROOT,
                "The inlet climbed by %.2f %s in %.0f s with nothing firing: the supply's regulator does not lock up."
                        + " Shut off and call the supplier.",
                value - from,
                unit.symbol(),
                seconds));
    }
}
