package settlemark.job;

import java.util.Objects;
import settlemark.measure.Conversion;
import settlemark.measure.Unit;

/**
 * A range that a value must lie in, and where the range comes from. One-sided limits have an infinite other end.
 *
 * @param lower smallest value allowed, may be negative infinity
 * @param upper largest value allowed, may be positive infinity
 * @param unit of both
 * @param source who says so, for instance {@code plate}; never empty
 */
public record Limit(double lower, double upper, Unit unit, String source) {
    public Limit {
        Objects.requireNonNull(unit);
        if (!(lower <= upper)) {
            throw new IllegalArgumentException("a limit runs from low to high, got " + lower + " to " + upper);
        }
        if (source.isBlank()) {
            throw new IllegalArgumentException("a limit says where it comes from");
        }
    }

    /** A target with the same tolerance on both sides. */
    public static Limit around(double target, double tolerance, Unit unit, String source) {
        return new Limit(target - tolerance, target + tolerance, unit, source);
    }

    /** Nothing is asked: the plan does not read it, or the plate does not say. Nothing is judged by it. */
    public static Limit open(Unit unit, String source) {
        return new Limit(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, unit, source);
    }

    /** Whether it asks nothing. */
    public boolean isOpen() {
        return Double.isInfinite(lower) && Double.isInfinite(upper);
    }

    public boolean contains(double value) {
        return value >= lower && value <= upper;
    }

    /** As people read it, without what a conversion of units left behind; never for judging. */
    public Limit shown() {
        ShownRange shown = ShownRange.of(lower, upper);
        return new Limit(shown.lower(), shown.upper(), unit, source);
    }

    public Limit to(Unit target) {
        Conversion conversion = unit.to(target);
        return new Limit(conversion.apply(lower), conversion.apply(upper), target, source);
    }
}
