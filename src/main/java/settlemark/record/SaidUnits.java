package settlemark.record;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import settlemark.measure.Conversion;
import settlemark.measure.Unit;

/**
 * Numbers within sentences in other units. A sentence of a finding speaks of changes and of pressures, neither of which
 * has an offset; a temperature on its scale is left as it was said.
 */
final class SaidUnits {
    private static final MathContext THREE_DIGITS = new MathContext(3, RoundingMode.HALF_EVEN);

    private static final Map<String, String> PRINTED =
            Map.of("inH2O", "inH\u2082O", "degF", "\u00B0F", "degC", "\u00B0C", "ft3", "ft\u00B3", "m3", "m\u00B3");
    private static final Pattern ASCII = Pattern.compile("(?<![\\w\u2082])(inH2O|degF|degC|ft3|m3)(?!\\w)");

    /** Not within a word, a date or a range. */
    private static final Pattern MINUS = Pattern.compile("(?<= )-(?=\\d)");

    /** Pressures only: a number after another one's unit, as in "from 1.67 to 1.70", has the same. */
    private static final Pattern PRESSURES =
            Pattern.compile("([+\u2212-]?\\d+(?:\\.\\d+)?) (inH\u2082O|Pa|kPa|mbar|psi|mmH\u2082O)(?!\\w)"
                    + "((?:(?!\\d+\\.\\d)[^.;:]|(?<=\\d)\\.(?=\\d)|(?:from |to )\\d+\\.\\d+)*?"
                    + "from (\\d+\\.\\d+)( \\([a-z ]+\\))? to (\\d+\\.\\d+))?");

    /** Two pressures with one unit behind both. */
    private static final Pattern RANGE = Pattern.compile(
            "(?<!from )(?<![\\d.])(\\d+\\.\\d+) to (\\d+\\.\\d+) (inH\u2082O|Pa|kPa|mbar|psi|mmH\u2082O)(?!\\w)");

    /** A number of the detector's reason that is not a time, a share or a place in a list. */
    private static final Pattern FIGURE =
            Pattern.compile("(?<![\\w.])(\\d++(?:\\.\\d++)?+(?:E-?\\d++)?+)(?! s\\b| %|[\\w.]\\w)");

    private SaidUnits() {}

    /** As it is printed: the units' proper symbols, and a minus that is one. */
    static String printed(String words) {
        String symbols = ASCII.matcher(words).replaceAll(m -> PRINTED.getOrDefault(m.group(1), m.group(1)));
        return MINUS.matcher(symbols).replaceAll("\u2212");
    }

    static String in(String words, UnaryOperator<Unit> shown) {
        String each = RANGE.matcher(printed(words)).replaceAll("$1 $3 to $2 $3");
        return PRESSURES.matcher(each).replaceAll(m -> Matcher.quoteReplacement(pressures(m, shown)));
    }

    private static String pressures(MatchResult found, UnaryOperator<Unit> shown) {
        Unit unit = unit(found.group(2));
        Unit target = shown.apply(unit);
        if (target.equals(unit)) {
            return found.group();
        }
        Conversion to = unit.to(target);
        String text = converted(found.group(1), to) + " " + target.symbol();
        if (found.group(3) == null) {
            return text;
        }
        String rest = found.group(3);
        String between = rest.substring(
                0,
                rest.length()
                        - ("from " + found.group(4) + (found.group(5) == null ? "" : found.group(5)) + " to "
                                        + found.group(6))
                                .length());
        return text + between + "from " + converted(found.group(4), to) + (found.group(5) == null ? "" : found.group(5))
                + " to " + converted(found.group(6), to);
    }

    private static Unit unit(String symbol) {
        return switch (symbol) {
            case "inH\u2082O" -> Unit.INCH_OF_WATER;
            case "psi" -> Unit.ucum("[psi]");
            case "mmH\u2082O" -> Unit.ucum("mm[H2O]");
            default -> Unit.ucum(symbol);
        };
    }

    /** A detector's reason; what it is about was moved or may move, so no offset is in it. What was typed stays. */
    static String reason(String reason, Conversion to) {
        if (to.equals(Conversion.IDENTITY) || reason.contains("moved away from") || reason.startsWith("typed")) {
            return reason;
        }
        return FIGURE.matcher(reason)
                .replaceAll(m -> Matcher.quoteReplacement(
                        rounded(Math.abs(to.applyDifference(Double.parseDouble(m.group(1)))), THREE_DIGITS)));
    }

    private static String converted(String number, Conversion to) {
        boolean signed = number.startsWith("+");
        double value = to.applyDifference(Double.parseDouble(number.replace('\u2212', '-')));
        String text = rounded(Math.abs(value), new MathContext(digits(number), RoundingMode.HALF_EVEN));
        return (value < 0 ? "\u2212" : signed ? "+" : "") + text;
    }

    /** As many as were said, and at least two: 0.03 inches are 7.5 pascals. */
    private static int digits(String number) {
        return Math.max(2, new BigDecimal(number.replaceAll("[^0-9.]", "")).precision());
    }

    private static String rounded(double value, MathContext digits) {
        BigDecimal number = new BigDecimal(value).round(digits).stripTrailingZeros();
        return number.scale() < 0
                ? number.setScale(0, RoundingMode.UNNECESSARY).toPlainString()
                : number.toPlainString();
    }
}
