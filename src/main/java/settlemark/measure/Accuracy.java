package settlemark.measure;

/**
 * A gauge maker's accuracy statement: ±(fraction of reading + fraction of range + a constant), taken as the half-width
 * of a rectangular distribution (JCGM 100:2008, 4.3.7).
 *
 * @param ofReading fraction of the reading, 0.01 is 1 %
 * @param ofRange fraction of the range
 * @param constant in the channel's unit
 * @param range the span that {@code ofRange} refers to, in the channel's unit
 */
public record Accuracy(double ofReading, double ofRange, double constant, double range) {
    /** No statement: contributes nothing, and the record says that it is unknown. */
    public static final Accuracy UNKNOWN = new Accuracy(0, 0, 0, 0);

    public Accuracy {
        if (!(ofReading >= 0) || !(ofRange >= 0) || !(constant >= 0) || !(range >= 0)) {
            throw new IllegalArgumentException("an accuracy has no negative part");
        }
    }

    /** Half-width of the interval around a reading, in the channel's unit. */
    public double halfWidth(double reading) {
        return ofReading * Math.abs(reading) + ofRange * range + constant;
    }

    /** Standard uncertainty of a reading, in the channel's unit: the half-width over the square root of three. */
    public double standardUncertainty(double reading) {
        return halfWidth(reading) / Math.sqrt(3);
    }
}
