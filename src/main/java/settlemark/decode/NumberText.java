package settlemark.decode;

import java.nio.charset.StandardCharsets;

/**
 * Decimal numbers in ASCII: a sign, digits, a point, digits, an exponent. Gives the double nearest to the decimal
 * number: with at most 15 digits and a power of ten up to 22 both are exact doubles, and one division or
 * multiplication rounds once (W. D. Clinger, How to read floating point numbers accurately, 1990); longer ones go
 * through the platform's parser.
 */
final class NumberText {
    private static final int LONGEST = 40;
    private static final long EXACT_BELOW = 1L << 53;
    private static final double[] POWERS_OF_TEN = {
        1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19,
        1e20, 1e21, 1e22
    };

    private NumberText() {}

    /** The number, NaN where the text is none or has no finite double. */
    static double parse(byte[] text, int from, int to) {
        if (to <= from || to - from > LONGEST) {
            return Double.NaN;
        }
        boolean negative = text[from] == '-';
        int i = negative || text[from] == '+' ? from + 1 : from;
        long digits = 0;
        boolean any = false;
        int decimals = 0;
        boolean point = false;
        for (; i < to && (Ascii.isDigit(text[i]) || text[i] == '.' && !point); i++) {
            if (text[i] == '.') {
                point = true;
                continue;
            }
            digits = digits < EXACT_BELOW ? 10 * digits + text[i] - '0' : Long.MAX_VALUE;
            any = true;
            decimals += point ? 1 : 0;
        }
        if (!any) {
            return Double.NaN;
        }
        if (i == to && digits < EXACT_BELOW && decimals < POWERS_OF_TEN.length) {
            double value = digits / POWERS_OF_TEN[decimals];
            return negative ? -value : value;
        }
        return i == to || isExponent(text, i, to) ? platform(text, from, to) : Double.NaN;
    }

    private static boolean isExponent(byte[] text, int from, int to) {
        if (text[from] != 'e' && text[from] != 'E') {
            return false;
        }
        int i = from + 1;
        if (i < to && (text[i] == '+' || text[i] == '-')) {
            i++;
        }
        int digits = to - i;
        for (; i < to; i++) {
            if (!Ascii.isDigit(text[i])) {
                return false;
            }
        }
        return digits > 0 && digits <= 4;
    }

    private static double platform(byte[] text, int from, int to) {
        double value = Double.parseDouble(new String(text, from, to - from, StandardCharsets.US_ASCII));
        return Double.isFinite(value) ? value : Double.NaN;
    }
}
