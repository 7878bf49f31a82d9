package settlemark.job;

import java.util.Objects;
import settlemark.measure.Unit;

/**
 * What the plate says about one firing stage.
 *
 * @param key {@code low} or {@code high}
 * @param name as spoken, {@code low fire}
 * @param manifoldTarget manifold pressure to be set, NaN together with the tolerance where the job reads no manifold
 * @param manifoldTolerance allowed deviation to either side
 * @param unit of both pressures
 * @param inputBtuPerHour rated input, NaN where the plate does not say
 */
public record StagePlate(
        String key, String name, double manifoldTarget, double manifoldTolerance, Unit unit, double inputBtuPerHour) {
    public StagePlate {
        Objects.requireNonNull(unit);
        boolean notSaid = Double.isNaN(manifoldTarget) && Double.isNaN(manifoldTolerance);
        if (!notSaid && (!(manifoldTarget > 0) || !(manifoldTolerance > 0))) {
            throw new IllegalArgumentException("manifold target and tolerance of " + name + " must be above 0, got "
                    + manifoldTarget + " and " + manifoldTolerance + "; copy them from the plate");
        }
    }

    public Limit manifoldLimit() {
        return Double.isNaN(manifoldTarget)
                ? Limit.open(unit, "not asked")
                : Limit.around(manifoldTarget, manifoldTolerance, unit, "plate");
    }
}
