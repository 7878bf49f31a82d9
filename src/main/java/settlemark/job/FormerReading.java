package settlemark.job;

import java.util.Objects;
import settlemark.measure.Role;
import settlemark.measure.Unit;

/**
 * A value as it was left at a former visit.
 *
 * @param stage key of the firing stage, empty where nothing burned
 * @param role what it is of
 * @param value a finite number in the unit
 * @param expandedUncertainty coverage factor 2, in the unit
 * @param unit of both
 */
public record FormerReading(String stage, Role role, double value, double expandedUncertainty, Unit unit) {
    public FormerReading {
        Objects.requireNonNull(role);
        if (!Double.isFinite(value) || !(expandedUncertainty >= 0)) {
            throw new IllegalArgumentException("a former value is a number with an uncertainty of 0 or more, got "
                    + value + " and " + expandedUncertainty);
        }
    }
}
