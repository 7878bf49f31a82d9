package settlemark.ui;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.Locale;
import settlemark.measure.Unit;

/** Numbers in words and digits, the same in every country. */
final class Numbers {
    static final String MINUS = "\u2212";

    /** Relative size of what binary arithmetic leaves behind. */
    private static final double NOISE = 1e-9;

    private Numbers() {}

    /** Decimals that a value needs so that its settling limit is at least one step: 0.02 gives 2, 0.5 gives 1, 5 gives 0. */
    static int decimals(double limit) {
        if (!(limit > 0) || Double.isInfinite(limit)) {
            return 2;
        }
        return (int) Math.max(0, Math.min(4, Math.ceil(-Math.log10(limit) - 1e-9)));
    }

    /** A value with fixed decimals; a true minus; never a negative zero; a dash where there is no number. */
    static String fixed(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return "\u2013";
        }
        String digits = BigDecimal.valueOf(Math.abs(value))
                .setScale(decimals, RoundingMode.HALF_EVEN)
                .toPlainString();
        boolean zero = digits.chars().allMatch(c -> c == '0' || c == '.');
        return value < 0 && !zero ? MINUS + digits : digits;
    }

    /** With a plus where it is positive. */
    static String signed(double value, int decimals) {
        String text = fixed(value, decimals);
        return value > 0 && !text.startsWith(MINUS) ? "+" + text : text;
    }

    /** An upper bound, never rounded down, with two significant digits but at most one decimal more than the value. */
    static String bound(double value, int valueDecimals) {
        if (!Double.isFinite(value)) {
            return Words.say("an unknown amount");
        }
        int wanted = value <= 0 ? valueDecimals : 1 - (int) Math.floor(Math.log10(value) + NOISE);
        return ceiling(value, Math.max(0, Math.min(valueDecimals + 1, wanted)));
    }

    /** An uncertainty beside its value, with the same decimals, never rounded down to nothing. */
    static String plusMinus(double value, int valueDecimals) {
        return Double.isFinite(value) ? "\u00b1" + ceiling(value, valueDecimals) : Words.say("\u00b1 unknown");
    }

    /** Rounded up, but not for the last bits of a binary fraction. */
    private static String ceiling(double value, int decimals) {
        double less = value - Math.abs(value) * NOISE;
        return new BigDecimal(Double.toString(less))
                .setScale(decimals, RoundingMode.CEILING)
                .toPlainString();
    }

    /** A set value, such as a limit, without trailing zeros. */
    static String plain(double value) {
        if (!Double.isFinite(value)) {
            return value < 0 ? Words.say("no least") : Words.say("no most");
        }
        BigDecimal rounded =
                BigDecimal.valueOf(value).setScale(4, RoundingMode.HALF_EVEN).stripTrailingZeros();
        String text = (rounded.scale() < 0 ? rounded.setScale(0) : rounded).toPlainString();
        return text.startsWith("-") ? MINUS + text.substring(1) : text;
    }

    /** Seconds up to two minutes, then minutes, then hours. */
    static String age(long nanos) {
        Duration age = Duration.ofNanos(Math.max(0, nanos));
        if (age.toSeconds() < 120) {
            return age.toSeconds() + " s";
        }
        return age.toMinutes() < 120 ? age.toMinutes() + " min" : age.toHours() + " h";
    }

    static String seconds(double seconds) {
        return String.format(Locale.ROOT, "%.0f s", Math.ceil(seconds));
    }

    /** A unit as it is read aloud. */
    static String spoken(Unit unit) {
        return switch (unit.code()) {
            case "[in_i'H2O]" -> Words.say("inches of water");
            case "[degF]" -> Words.say("degrees Fahrenheit");
            case "Cel" -> Words.say("degrees Celsius");
            case "Pa" -> Words.say("pascals");
            case "%" -> Words.say("per cent");
            default -> unit.symbol();
        };
    }

    static String capital(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
