package settlemark.record;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A double as text that gives the same bits again: as Java writes it, which other programs read as well, and a NaN of
 * other bits than the usual one with these behind it, such as {@code NaN:7ff8000000000001}.
 */
final class ExactNumber {
    private static final String ODD = "NaN:";
    private static final Pattern NUMBER =
            Pattern.compile("[+-]?(?:Infinity|(?:\\d{1,400}\\.?\\d{0,400}|\\.\\d{1,400})(?:[eE][+-]?\\d{1,4})?)");
    private static final Pattern ODD_NUMBER = Pattern.compile("NaN:([0-9a-fA-F]{16})");

    private ExactNumber() {}

    static String text(double value) {
        long bits = Double.doubleToRawLongBits(value);
        boolean odd = Double.isNaN(value) && bits != Double.doubleToLongBits(value);
        return odd ? ODD + String.format(Locale.ROOT, "%016x", bits) : Double.toString(value);
    }

    /** @throws IllegalArgumentException where it is no such text */
    static double read(String text) {
        if (text.equals("NaN")) {
            return Double.NaN;
        }
        Matcher odd = ODD_NUMBER.matcher(text);
        if (odd.matches()) {
            double value = Double.longBitsToDouble(Long.parseUnsignedLong(odd.group(1), 16));
            if (Double.isNaN(value)) {
                return value;
            }
        }
        if (!NUMBER.matcher(text).matches()) {
            throw new IllegalArgumentException("a number, such as 3.52 with a point, NaN or Infinity");
        }
        return Double.parseDouble(text);
    }
}
