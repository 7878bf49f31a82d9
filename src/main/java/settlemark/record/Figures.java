package settlemark.record;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.regex.Pattern;
import settlemark.job.Limit;
import settlemark.job.Verdict;

/** Numbers as they are printed: a row of values keeps its decimals, and an uncertainty is never rounded down. */
final class Figures {
    private static final int GROUPED_FROM = 5;
    private static final int MOST_DECIMALS = 6;

    private static final Pattern GAS = Pattern.compile("\\b(?:o2|co2|co)\\b");

    private Figures() {}

    /** Decimals at which an uncertainty has its first digit, 0 to 6; where there is none, 2. */
    static int decimals(double uncertainty) {
        if (!(uncertainty > 0) || Double.isInfinite(uncertainty)) {
            return 2;
        }
        return (int) Math.max(0, Math.min(MOST_DECIMALS, -Math.floor(Math.log10(uncertainty))));
    }

    static String value(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return "none";
        }
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
        return minus(grouped(rounded.signum() == 0 ? rounded.abs().toPlainString() : rounded.toPlainString()));
    }

    /** With ± in front, rounded up: what is printed claims no more than was measured (JCGM 100:2008, 7.2.6). */
    static String uncertainty(double expanded, int decimals) {
        if (!Double.isFinite(expanded)) {
            return "\u00B1 unknown";
        }
        // A millionth of the last digit is noise of the arithmetic, not a reason to round up.
        double ulp = Math.pow(10, -decimals) * 1e-6;
        return "\u00B1"
                + BigDecimal.valueOf(Math.max(0, expanded - ulp))
                        .setScale(decimals, RoundingMode.CEILING)
                        .toPlainString();
    }

    /** As many decimals as it takes to show a judged value on the side of its limit that it lies on. */
    static int decimals(Verdict verdict, int atLeast) {
        int decimals = atLeast;
        while (decimals < MOST_DECIMALS && misleads(verdict, decimals)) {
            decimals++;
        }
        return decimals;
    }

    private static boolean misleads(Verdict verdict, int decimals) {
        double shown = BigDecimal.valueOf(verdict.value())
                .setScale(decimals, RoundingMode.HALF_EVEN)
                .doubleValue();
        return verdict.shownLimit().contains(shown) != verdict.limit().contains(verdict.value());
    }

    /** A number with no more digits than it has, at most five of them after the leading zeros. */
    static String plain(double value) {
        if (!Double.isFinite(value)) {
            return "none";
        }
        BigDecimal number = BigDecimal.valueOf(value)
                .round(new MathContext(5, RoundingMode.HALF_EVEN))
                .stripTrailingZeros();
        return minus(grouped(number.scale() < 0 ? number.setScale(0).toPlainString() : number.toPlainString()));
    }

    /** The limit of a verdict, on whose side the value is shown. */
    static String limit(Verdict verdict) {
        return range(verdict.shownLimit());
    }

    /** {@code 3.15 to 3.85}, or one-sided {@code at most 0.05}. */
    static String limit(Limit limit) {
        return range(limit.shown());
    }

    private static String range(Limit limit) {
        if (Double.isInfinite(limit.lower())) {
            return Double.isInfinite(limit.upper()) ? "no limit" : "at most " + plain(limit.upper());
        }
        return Double.isInfinite(limit.upper())
                ? "at least " + plain(limit.lower())
                : plain(limit.lower()) + " to " + plain(limit.upper());
    }

    /** A gas as people write it: what is typed as {@code o2} stands on the page with its index. */
    static String subject(String words) {
        return GAS.matcher(words)
                .replaceAll(m -> m.group().equals("o2") ? "O\u2082" : m.group().equals("co2") ? "CO\u2082" : "CO");
    }

    static String whole(double value) {
        return minus(grouped(Long.toString(Math.round(value))));
    }

    /** Five digits and more before the point stand in groups of three. */
    private static String grouped(String text) {
        int start = text.startsWith("-") ? 1 : 0;
        int point = text.indexOf('.') < 0 ? text.length() : text.indexOf('.');
        StringBuilder grouped = new StringBuilder(text);
        for (int at = point - 3; point - start >= GROUPED_FROM && at > start; at -= 3) {
            grouped.insert(at, '\u00A0');
        }
        return grouped.toString();
    }

    private static String minus(String text) {
        return text.replace('-', '\u2212');
    }
}
