package settlemark.decode;

import settlemark.profile.Curve;

/**
 * From a raw number to a channel's value: {@code sign * (raw * scale + offset)}.
 *
 * <p>A scale such as 0.01 has no exact double; dividing by 100 gives the double nearest to the decimal number that the
 * device means, as reading its text would.
 */
final class Scaling {
    private final double scale;
    private final double offset;
    private final double divisor;
    private final int sign;

    Scaling(Curve curve, int sign) {
        Curve.Linear linear = (Curve.Linear) curve;
        this.scale = linear.scale();
        this.offset = linear.offset();
        this.sign = sign;
        double inverse = Math.rint(1 / scale);
        this.divisor = inverse != 0 && 1 / inverse == scale ? inverse : 0;
    }

    double value(double raw) {
        double scaled = divisor != 0 ? raw / divisor : raw * scale;
        // Adding zero last turns a negative zero into zero.
        return sign * (scaled + offset) + 0.0;
    }

    /** The raw number of a value, not rounded. */
    double raw(double value) {
        double scaled = sign * value - offset;
        return divisor != 0 ? scaled * divisor : scaled / scale;
    }
}
