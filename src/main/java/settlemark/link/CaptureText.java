package settlemark.link;

import java.math.BigDecimal;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import settlemark.session.LinkChange;

/** How the parts of a capture are written; beside the reader's and the writer's, the only place that knows. */
final class CaptureText {
    static final String FORMAT = "settlemark-capture";
    static final String VERSION = "1";
    static final String START = "start";
    static final String PROBE = "probe";
    static final String END = "end";
    static final String STRAY = "stray";
    static final String UNKNOWN = "-";
    static final String DIGEST = "sha256:";

    static final HexFormat HEX = HexFormat.ofDelimiter(" ").withUpperCase();

    private static final Pattern SECONDS = Pattern.compile("[0-9]{1,9}(\\.[0-9]{1,9})?");
    private static final int DECIMALS = 9;

    private CaptureText() {}

    /** Seconds with all nine decimals, so that no nanosecond is lost. */
    static String seconds(long nanos) {
        return BigDecimal.valueOf(nanos, DECIMALS).toPlainString();
    }

    /** Nanoseconds of a time below a thousand million seconds, empty where it is none. */
    static Optional<Long> nanos(String seconds) {
        return SECONDS.matcher(seconds).matches()
                ? Optional.of(new BigDecimal(seconds).movePointRight(DECIMALS).longValueExact())
                : Optional.empty();
    }

    static String word(LinkChange change) {
        return change.name().toLowerCase(Locale.ROOT);
    }

    static Optional<LinkChange> change(String word) {
        for (LinkChange change : LinkChange.values()) {
            if (word(change).equals(word)) {
                return Optional.of(change);
            }
        }
        return Optional.empty();
    }

    /** On one line, whatever a device's name holds. */
    static String oneLine(String words) {
        return words.codePoints()
                .map(c -> Character.isISOControl(c) || c == 0x2028 || c == 0x2029 ? ' ' : c)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }
}
