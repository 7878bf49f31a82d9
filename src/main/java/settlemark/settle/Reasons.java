package settlemark.settle;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;

/** The one-line reasons, with numbers in the unit of the samples; the reader knows which one that is. */
final class Reasons {
    /** Said where a rule and the proof hold, each of another value. */
    static final String OTHER_VALUE = ", but of readings from before it moved";

    private static final double[] POWERS = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6};
    private static final MathContext THREE_DIGITS = new MathContext(3, RoundingMode.HALF_EVEN);

    private final SettleSettings settings;

    Reasons(SettleSettings settings) {
        this.settings = settings;
    }

    String proved(Proof proof) {
        if (proof instanceof HuntingProof) {
            return "swings ±" + digits(proof.swing()) + " within ±" + digits(settings.band())
                    + ", the middle could still move " + digits(proof.couldMove()) + ", limit "
                    + digits(settings.driftLimit());
        }
        return "moved " + movement(proof.moved()) + " in the last "
                + seconds(proof.spanSeconds()) + ", could still move " + digits(proof.couldMove()) + ", limit "
                + digits(settings.driftLimit());
    }

    String couldMove(Proof proof) {
        return "could still move " + digits(proof.couldMove()) + ", limit " + digits(settings.driftLimit());
    }

    String tooNoisy(Proof proof, double secondsToNextWindow) {
        double noise = proof.couldMove() - proof.expectedToMove();
        String text = "not settled: reading is too noisy to prove it (±" + digits(noise) + " vs limit "
                + digits(settings.driftLimit()) + ")";
        return secondsToNextWindow > 0 ? text + ", a longer look ends in " + seconds(secondsToNextWindow) : text;
    }

    String holding(Proof proof, double secondsToGo) {
        return "holding for " + seconds(Math.ceil(secondsToGo)) + " more: " + proved(proof);
    }

    String turnsLately() {
        return "not yet: within the limit, but the last readings may be the start of a new movement";
    }

    String filling(double secondsToGo, String before) {
        String text = "not yet: " + seconds(Math.ceil(secondsToGo)) + " of readings to go";
        return before.isEmpty() ? text : text + " (" + before + ")";
    }

    String changed(double by, double resolution) {
        return "changed by " + level(Math.abs(by), resolution);
    }

    String movedAway(double value, double resolution) {
        return "moved away from " + level(value, resolution);
    }

    String moving(LineProof proof, Ongoing beside) {
        return "moving by more than " + digits(proof.surelyMovesBeside(beside)) + " in "
                + seconds(settings.horizonSeconds()) + ", limit " + digits(settings.driftLimit());
    }

    /** Another window speaks against the one that could prove it. */
    String objects(LineProof line) {
        double moves = Math.max(line.expectedToMove(), line.movesAtEnd());
        return "moves " + digits(moves) + " in " + seconds(settings.horizonSeconds()) + " over the last "
                + seconds(line.spanSeconds()) + ", limit " + digits(settings.driftLimit());
    }

    String movedLately(double secondsToGo) {
        return "moved a moment ago, " + seconds(Math.ceil(secondsToGo)) + " of readings to go";
    }

    String swings(double halfWidth) {
        return "swings ±" + digits(halfWidth) + ", limit ±" + digits(settings.band());
    }

    String swung(double halfWidth) {
        return "swung ±" + digits(halfWidth) + " a while ago, limit ±" + digits(settings.band());
    }

    String gap(double pauseSeconds) {
        return "gap of " + seconds(pauseSeconds);
    }

    /** With one decimal more than the probe counts in, as of a mean; where it counts in none, to a tenth of the limit. */
    private String level(double value, double resolution) {
        double step = resolution > 0 ? resolution / 10 : settings.driftLimit() / 10;
        int decimals = Math.max(0, (int) Math.ceil(-Math.log10(step) - 1e-9));
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }

    /** A movement below a thousandth of the limit is none that anybody would speak of. */
    private String movement(double value) {
        return Math.abs(value) < settings.driftLimit() / 1000 ? "0" : digits(value);
    }

    private static String seconds(double value) {
        if (value > 0 && value < 1e9 && value == Math.rint(value)) {
            // A reason is made for each sample, and a formatter is slow.
            return (long) value + " s";
        }
        double below = Math.floor(value);
        if (value > 0 && value < 1e9 && farFromHalf(value - below)) {
            return (long) (value - below < 0.5 ? below : below + 1) + " s";
        }
        return String.format(Locale.ROOT, "%.0f s", value);
    }

    /** Whether a remainder, though it carries the error of a multiplication, says on which side a number rounds. */
    private static boolean farFromHalf(double remainder) {
        return Math.abs(remainder - 0.5) > 1e-6;
    }

    /** Three significant digits, without trailing zeros. */
    static String digits(double value) {
        if (value == 0 || !Double.isFinite(value)) {
            return value == 0 ? "0" : Double.toString(value);
        }
        double size = Math.abs(value);
        for (int decimals = 0; decimals < POWERS.length; decimals++) {
            if (size >= 100.0 / POWERS[decimals] && size < 999.4 / POWERS[decimals]) {
                double scaled = size * POWERS[decimals];
                double below = Math.floor(scaled);
                if (farFromHalf(scaled - below)) {
                    long digits = (long) (scaled - below < 0.5 ? below : below + 1);
                    return (value < 0 ? "-" : "") + withPoint(digits, decimals);
                }
            }
        }
        BigDecimal rounded = new BigDecimal(value).round(THREE_DIGITS).stripTrailingZeros();
        return size < 1e-4 || size >= 1e6 ? rounded.toString() : rounded.toPlainString();
    }

    /** Without trailing zeros after the point. */
    private static String withPoint(long digits, int decimals) {
        long left = digits;
        int places = decimals;
        while (places > 0 && left % 10 == 0) {
            left /= 10;
            places--;
        }
        String text = Long.toString(left);
        if (places == 0) {
            return text;
        }
        String padded = "0".repeat(Math.max(0, places + 1 - text.length())) + text;
        int point = padded.length() - places;
        return padded.substring(0, point) + "." + padded.substring(point);
    }
}
