package settlemark.exchange;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.Locale;

/** Bytes in a message: text in quotes where they are text, else hexadecimal pairs; long ones are cut. */
final class Quoted {
    private static final int SHOWN_BYTES = 40;

    private Quoted() {}

    static String of(byte[] bytes) {
        return of(bytes, 0, bytes.length);
    }

    static String of(byte[] bytes, int from, int to) {
        int shown = Math.min(to, from + SHOWN_BYTES);
        String more = shown < to ? " and " + (to - shown) + " bytes more" : "";
        return (isText(bytes, from, to) ? text(bytes, from, shown) : hex(bytes, from, shown)) + more;
    }

    private static boolean isText(byte[] bytes, int from, int to) {
        for (int i = from; i < to; i++) {
            int b = bytes[i] & 0xFF;
            if (b >= 0x7F || b < 0x20 && b != '\r' && b != '\n' && b != '\t') {
                return false;
            }
        }
        return true;
    }

    private static String text(byte[] bytes, int from, int to) {
        return '"'
                + new String(bytes, from, to - from, StandardCharsets.US_ASCII)
                        .replace("\r", "\\r")
                        .replace("\n", "\\n")
                        .replace("\t", "\\t")
                + '"';
    }

    private static String hex(byte[] bytes, int from, int to) {
        return HexFormat.ofDelimiter(" ").formatHex(bytes, from, to).toUpperCase(Locale.ROOT);
    }
}
