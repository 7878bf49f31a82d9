package settlemark.measure;

import java.util.Objects;

/**
 * A value with its standard uncertainty and its unit.
 *
 * @param value in the unit
 * @param standardUncertainty one standard deviation in the unit, not negative; 0 where it is exact
 * @param unit the unit of both
 */
public record Quantity(double value, double standardUncertainty, Unit unit) {
    public Quantity {
        Objects.requireNonNull(unit);
        if (!(standardUncertainty >= 0)) {
            throw new IllegalArgumentException("standard uncertainty must not be negative, got " + standardUncertainty);
        }
    }

    /** The same quantity in another unit of the same dimension. */
    public Quantity to(Unit target) {
        Conversion conversion = unit.to(target);
        return new Quantity(conversion.apply(value), Math.abs(conversion.applyDifference(standardUncertainty)), target);
    }

    /** Expanded uncertainty with coverage factor 2 (JCGM 100:2008, 6.2), in the unit. */
    public double expandedUncertainty() {
        return 2 * standardUncertainty;
    }
}
