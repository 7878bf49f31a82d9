package settlemark.cli;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import settlemark.cli.Interview.RefusedException;
import settlemark.profile.ByteText;

/** Text as it is typed: {@code \n}, {@code \r}, {@code \t}, {@code \\} and {@code \xHH} for what no key gives. */
final class EscapedText {
    private EscapedText() {}

    static String of(String typed) throws RefusedException {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < typed.length(); i++) {
            char c = typed.charAt(i);
            if (c > '~') {
                throw new RefusedException(
                        "only ASCII characters can be taken, got \"" + c + "\"; write other bytes as" + " \\xHH");
            }
            if (c != '\\') {
                text.append(c);
                continue;
            }
            i++;
            char kind = i < typed.length() ? typed.charAt(i) : ' ';
            switch (kind) {
                case 'n' -> text.append('\n');
                case 'r' -> text.append('\r');
                case 't' -> text.append('\t');
                case '\\' -> text.append('\\');
                case 'x' -> {
                    text.append(hex(typed, i + 1));
                    i += 2;
                }
                default ->
                    throw new RefusedException(
                            "behind a backslash stands n, r, t, xHH or another backslash, got \"" + kind + "\"");
            }
        }
        return text.toString();
    }

    private static char hex(String typed, int at) throws RefusedException {
        try {
            return (char) HexFormat.fromHexDigits(typed, at, at + 2);
        } catch (IllegalArgumentException | IndexOutOfBoundsException e) {
            throw new RefusedException("behind \\x stand two hexadecimal digits, such as \\x0A");
        }
    }

    /** The other way, for a question's standard answer. */
    static String shown(String text) {
        return text.replace("\\", "\\\\")
                .replace("\n", "\\n")
                .replace("\r", "\\r")
                .replace("\t", "\\t");
    }

    static ByteText bytes(String text) {
        return ByteText.of(text.getBytes(StandardCharsets.ISO_8859_1));
    }

    /** Bytes in hexadecimal pairs; one at least. */
    static ByteText hexBytes(String typed) throws RefusedException {
        try {
            ByteText bytes = ByteText.ofHex(typed);
            if (!bytes.isEmpty()) {
                return bytes;
            }
        } catch (IllegalArgumentException e) {
            // Told below.
        }
        throw new RefusedException("bytes are pairs of hexadecimal digits such as A5 5A 08, got \"" + typed + "\"");
    }
}
