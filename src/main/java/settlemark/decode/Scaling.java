package settlemark.decode;

import org.jspecify.annotations.Nullable;
import settlemark.measure.SampleStatus;
import settlemark.profile.Curve;

/**
 * From a raw number to a channel's value: {@code sign * curve(raw)}, the curve being mostly {@code raw * scale + offset}.
 *
 * <p>A scale such as 0.01 has no exact double; dividing by 100 gives the double nearest to the decimal number that the
 * device means, as reading its text would.
 */
final class Scaling {
    private final double scale;
    private final double offset;
    private final double divisor;
    private final int sign;
    private final @Nullable BentCurve bent;

    Scaling(Curve curve, int sign) {
        Curve.Linear linear = curve instanceof Curve.Linear l ? l : new Curve.Linear(1, 0);
        this.scale = linear.scale();
        this.offset = linear.offset();
        this.sign = sign;
        double inverse = Math.rint(1 / scale);
        this.divisor = inverse != 0 && 1 / inverse == scale ? inverse : 0;
        this.bent = bent(curve);
    }

    private static @Nullable BentCurve bent(Curve curve) {
        if (curve instanceof Curve.Polynomial polynomial) {
            return new PolynomialCurve(polynomial);
        }
        return curve instanceof Curve.Table table ? new TableCurve(table) : null;
    }

    /** Infinite or NaN where the raw number is, and beyond the ends of a table. */
    double value(double raw) {
        if (bent != null) {
            return sign * bent.apply(raw) + 0.0;
        }
        double scaled = divisor != 0 ? raw / divisor : raw * scale;
        // Adding zero last turns a negative zero into zero.
        return sign * (scaled + offset) + 0.0;
    }

    /** The raw number of a value, not rounded; the one nearest to the hint where there are several. */
    double raw(double value, double hint) {
        if (bent != null) {
            return bent.inverse(sign * value, hint);
        }
        double scaled = sign * value - offset;
        return divisor != 0 ? scaled * divisor : scaled / scale;
    }

    /** Whether the curve has the value at all. */
    boolean reaches(double value) {
        return bent == null || bent.reaches(sign * value);
    }

    /** What a value beyond all that can be written is. */
    SampleStatus beyond(double value) {
        boolean high = bent instanceof TableCurve table ? table.isHigh(sign * value) == sign > 0 : value > 0;
        return high ? SampleStatus.OVER_RANGE : SampleStatus.UNDER_RANGE;
    }

    /** Integers that lie beyond the ends of the curve, none where it has no ends. */
    double[] rawsBeyond() {
        return bent instanceof TableCurve table
                ? new double[] {Math.floor(table.firstRaw()) - 1, Math.ceil(table.lastRaw()) + 1}
                : new double[0];
    }
}
