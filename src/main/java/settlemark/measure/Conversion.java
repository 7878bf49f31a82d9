package settlemark.measure;

/**
 * An affine change of unit, {@code y = offset + slope * x}. A difference uses the slope alone.
 *
 * @param offset value in the target unit of zero in the source unit
 * @param slope target units per source unit, never zero
 */
public record Conversion(double offset, double slope) {
    public static final Conversion IDENTITY = new Conversion(0, 1);

    public Conversion {
        if (!Double.isFinite(offset) || !Double.isFinite(slope) || slope == 0) {
            throw new IllegalArgumentException("not a change of unit: offset " + offset + ", slope " + slope);
        }
    }

    /** Converts a value, such as a temperature on a scale. */
    public double apply(double value) {
        return offset + slope * value;
    }

    /** Converts a difference, a width or an uncertainty. The sign of a reversing slope is kept. */
    public double applyDifference(double difference) {
        return slope * difference;
    }

    /** This conversion followed by another. */
    public Conversion then(Conversion next) {
        return new Conversion(next.offset + next.slope * offset, next.slope * slope);
    }

    public Conversion inverse() {
        return new Conversion(-offset / slope, 1 / slope);
    }
}
