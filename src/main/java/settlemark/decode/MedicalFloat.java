package settlemark.decode;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Numbers of ISO/IEEE 11073-20601: SFLOAT of 16 bits (4 of exponent, 12 of mantissa) and FLOAT of 32 bits (8 and 24),
 * {@code mantissa * 10^exponent}, both signed. The five mantissas around the most negative one are no numbers.
 */
final class MedicalFloat {
    /** By power of ten, as far as any exponent goes. */
    private static final double[] POWERS = powers();

    private final int mantissaBits;
    private final int exponentBits;
    /** Mantissas beyond it, either way, are no numbers. */
    private final long largestMantissa;

    private MedicalFloat(int mantissaBits, int exponentBits) {
        this.mantissaBits = mantissaBits;
        this.exponentBits = exponentBits;
        this.largestMantissa = (1L << mantissaBits - 1) - 3;
    }

    static MedicalFloat of(int bytes) {
        return bytes == 2 ? new MedicalFloat(12, 4) : new MedicalFloat(24, 8);
    }

    /** The number; NaN for what is none or not at this resolution or reserved; infinite where it says so. */
    double value(long bits) {
        int unused = 64 - mantissaBits;
        long mantissa = bits << unused >> unused;
        if (mantissa > largestMantissa) {
            return mantissa == largestMantissa + 1 ? Double.POSITIVE_INFINITY : Double.NaN;
        }
        if (mantissa < -largestMantissa) {
            return mantissa == -largestMantissa - 1 ? Double.NEGATIVE_INFINITY : Double.NaN;
        }
        int unusedAbove = 64 - mantissaBits - exponentBits;
        long exponent = bits << unusedAbove >> 64 - exponentBits;
        return exponent < 0 ? mantissa / POWERS[(int) -exponent] : mantissa * POWERS[(int) exponent];
    }

    long notANumber() {
        return largestMantissa + 2;
    }

    long infinity(boolean negative) {
        return negative ? -largestMantissa - 1 & (1L << mantissaBits) - 1 : largestMantissa + 1;
    }

    /** The bits nearest to a finite number, infinite where it is too large. */
    long bits(double value) {
        int leastExponent = -(1 << exponentBits - 1);
        int mostExponent = (1 << exponentBits - 1) - 1;
        BigDecimal number = BigDecimal.valueOf(value).stripTrailingZeros();
        if (number.scale() > -leastExponent) {
            number = number.setScale(-leastExponent, RoundingMode.HALF_EVEN);
        }
        if (-number.scale() > mostExponent) {
            number = number.setScale(-mostExponent, RoundingMode.UNNECESSARY);
        }
        for (int digits = Math.min(number.precision(), 8); !fits(number) && digits > 0; digits--) {
            number = number.round(new MathContext(digits, RoundingMode.HALF_EVEN));
        }
        if (!fits(number) || -number.scale() > mostExponent) {
            return infinity(value < 0);
        }
        long mantissa = number.unscaledValue().longValueExact();
        long exponent = number.signum() == 0 ? 0 : -number.scale();
        long mask = (1L << mantissaBits) - 1;
        return mantissa & mask | (exponent & (1L << exponentBits) - 1) << mantissaBits;
    }

    private boolean fits(BigDecimal number) {
        return number.unscaledValue().bitLength() < 63
                && Math.abs(number.unscaledValue().longValueExact()) <= largestMantissa;
    }

    private static double[] powers() {
        double[] powers = new double[129];
        for (int i = 0; i < powers.length; i++) {
            powers[i] = Double.parseDouble("1e" + i);
        }
        return powers;
    }
}
