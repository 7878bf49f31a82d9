package settlemark.decode;

/** IEEE 754-2019 binary16: 1 bit of sign, 5 of exponent with bias 15, 10 of fraction. */
final class HalfPrecision {
    /** Largest finite number. */
    static final double LARGEST = 65504;

    private static final int INFINITY = 0x7C00;
    private static final int NOT_A_NUMBER = 0x7E00;

    private HalfPrecision() {}

    static double value(long bits) {
        int exponent = (int) (bits >>> 10) & 0x1F;
        int fraction = (int) bits & 0x3FF;
        double magnitude;
        if (exponent == 0x1F) {
            magnitude = fraction == 0 ? Double.POSITIVE_INFINITY : Double.NaN;
        } else if (exponent == 0) {
            magnitude = fraction * 0x1p-24;
        } else {
            magnitude = Math.scalb(1024.0 + fraction, exponent - 25);
        }
        return (bits & 0x8000) == 0 ? magnitude : -magnitude;
    }

    /** The nearest one, half to even; infinite beyond the largest by half a step. */
    static long bits(double value) {
        long sign = Double.doubleToRawLongBits(value) < 0 ? 0x8000 : 0;
        if (Double.isNaN(value)) {
            return NOT_A_NUMBER;
        }
        double magnitude = Math.abs(value);
        if (magnitude >= 65520) {
            return sign | INFINITY;
        }
        int exponent = Math.max(Math.getExponent(magnitude), -14);
        // A fraction that rounds up to 2048 carries into the exponent, as it must.
        long steps = (long) Math.rint(Math.scalb(magnitude, 10 - exponent));
        return sign | steps + ((exponent + 14L) << 10);
    }
}
