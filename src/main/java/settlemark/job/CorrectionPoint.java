package settlemark.job;

import java.util.Objects;
import settlemark.measure.Conversion;
import settlemark.measure.Unit;

/**
 * What an instrument indicated at a true value when it was calibrated.
 *
 * @param channel name of the channel in the instrument's profile; empty for all channels that measure such a thing
 * @param trueValue by the reference, in the unit
 * @param indicated by the instrument, in the unit
 * @param expandedUncertainty of the difference as the certificate states it, at k = 2, in the unit; 0 or more
 * @param unit of all these
 */
public record CorrectionPoint(
        String channel, double trueValue, double indicated, double expandedUncertainty, Unit unit) {
    public CorrectionPoint {
        Objects.requireNonNull(channel);
        Objects.requireNonNull(unit);
        if (!Double.isFinite(trueValue) || !Double.isFinite(indicated)) {
            throw new IllegalArgumentException("a correction point has a true and an indicated value, got " + trueValue
                    + " and " + indicated + ": give both as numbers");
        }
        if (!(expandedUncertainty >= 0) || Double.isInfinite(expandedUncertainty)) {
            throw new IllegalArgumentException("a correction point's uncertainty must be 0 or more, got "
                    + expandedUncertainty + ": copy it from the certificate, at k = 2");
        }
        // No negative zero: nothing tells it from zero, and a table does not keep it.
        trueValue += 0.0;
        indicated += 0.0;
        expandedUncertainty += 0.0;
    }

    /** What must be added to what is indicated. */
    public double correction() {
        return trueValue - indicated;
    }

    /** The same in another unit of what it measures; its uncertainty as a difference. */
    CorrectionPoint in(Unit other) {
        if (unit.equals(other)) {
            return this;
        }
        Conversion to = unit.to(other);
        return new CorrectionPoint(
                channel,
                to.apply(trueValue),
                to.apply(indicated),
                Math.abs(to.applyDifference(expandedUncertainty)),
                other);
    }
}
