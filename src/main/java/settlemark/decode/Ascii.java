package settlemark.decode;

import java.util.HexFormat;

/** Bytes as characters of a line. */
final class Ascii {
    private static final int LONGEST_SHOWN = 40;
    private static final HexFormat PAIRS = HexFormat.ofDelimiter(" ").withUpperCase();

    private Ascii() {}

    /** Blank, tab, carriage return, line feed, and the null that some lines idle with. */
    static boolean isBlank(byte b) {
        return b == ' ' || b == '\t' || b == '\r' || b == '\n' || b == 0;
    }

    /** Index of the first byte that is not blank, the end where all are. */
    static int skipBlanks(byte[] bytes, int from, int to) {
        int start = from;
        while (start < to && isBlank(bytes[start])) {
            start++;
        }
        return start;
    }

    /** The end without the blanks before it. */
    static int dropBlanks(byte[] bytes, int from, int to) {
        int end = to;
        while (end > from && isBlank(bytes[end - 1])) {
            end--;
        }
        return end;
    }

    static boolean isDigit(byte b) {
        return b >= '0' && b <= '9';
    }

    /** In quotes for a message; what cannot be printed as hexadecimal. */
    static String quoted(byte[] bytes, int from, int to) {
        StringBuilder text = new StringBuilder("\"");
        int shown = Math.min(to, from + LONGEST_SHOWN);
        for (int i = from; i < shown; i++) {
            if (bytes[i] >= ' ' && bytes[i] < 0x7F) {
                text.append((char) bytes[i]);
            } else {
                text.append("\\x").append(PAIRS.toHexDigits(bytes[i]));
            }
        }
        return text.append(to > shown ? "...\"" : "\"").toString();
    }

    /** Hexadecimal pairs for a message. */
    static String hex(byte[] bytes, int from, int to) {
        int shown = Math.min(to, from + LONGEST_SHOWN / 2);
        return wholeHex(bytes, from, shown) + (to > shown ? " ..." : "");
    }

    /** All hexadecimal pairs. */
    static String wholeHex(byte[] bytes, int from, int to) {
        return PAIRS.formatHex(bytes, from, to);
    }
}
