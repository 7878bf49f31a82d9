package settlemark.record;

import java.util.Locale;
import java.util.regex.Pattern;

/** Characters that make a text look other than it is: they turn its direction, or are not seen at all. */
final class SafeText {
    /** Marks of direction (Unicode Standard Annex 9, 2) and the byte order mark. */
    private static final Pattern TURNING =
            Pattern.compile("[\\u061C\\u200E\\u200F\\u202A-\\u202E\\u2066-\\u2069\\uFEFF]");

    private static final Pattern CONTROL = Pattern.compile("[\\p{Cntrl}&&[^\t\r\n]]");

    private SafeText() {}

    /** Marks of direction as JSON and Java write them, so that they are seen and do nothing. */
    static String escaped(String text) {
        return TURNING.matcher(text).replaceAll(m -> "\\\\u" + hex(m.group().charAt(0)));
    }

    /** Other controls as well. */
    static String visible(String text) {
        return CONTROL.matcher(escaped(text))
                .replaceAll(m -> "\\\\u" + hex(m.group().charAt(0)));
    }

    /** Without any of them. */
    static String plain(String text) {
        return TURNING.matcher(text).replaceAll("").replaceAll("\\p{Cntrl}", " ");
    }

    private static String hex(char code) {
        return String.format(Locale.ROOT, "%04x", (int) code);
    }
}
