package settlemark.calc;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers for messages. */
final class Significant {
    private static final MathContext SIX = new MathContext(6);

    private Significant() {}

    /** With at most six significant digits, never with an exponent within a million to one. */
    static String digits(double number) {
        if (!Double.isFinite(number)) {
            return String.valueOf(number);
        }
        BigDecimal rounded = new BigDecimal(number).round(SIX).stripTrailingZeros();
        boolean plain = rounded.signum() == 0 || Math.abs(rounded.precision() - rounded.scale()) <= 7;
        return plain ? rounded.toPlainString() : rounded.toString();
    }
}
