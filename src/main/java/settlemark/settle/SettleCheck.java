package settlemark.settle;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Finds settings with which a channel could never settle, or would settle on what is not steady. */
public final class SettleCheck {
    private static final int FEWEST_READINGS = 6;
    private static final int PERIODS_IN_WINDOW = 3;

    private final SettleKind kind;
    private final SettleSettings settings;
    private final double factor;
    private final String unit;
    private final List<String> problems = new ArrayList<>();

    private SettleCheck(SettleSettings settings, double factor, String unit) {
        this.kind = settings.kind();
        this.settings = settings;
        this.factor = factor;
        this.unit = unit;
    }

    /**
     * All that is wrong, each with what, its value, what is expected and the remedy; empty where nothing is.
     *
     * @param chosen in the defaults' units
     * @param factor units of the words in one of the defaults' units
     * @param unit symbol for the words
     * @param resolution the step in which the gauge counts, in that unit; NaN where unknown
     * @param periodSeconds how often it gives a value; NaN where unknown
     */
    public static List<String> problems(
            SettleKind kind,
            SettleAdjustment chosen,
            double factor,
            String unit,
            double resolution,
            double periodSeconds) {
        SettleSettings settings;
        try {
            settings = chosen.of(SettleSettings.defaults(kind));
        } catch (IllegalArgumentException e) {
            return List.of(word(kind) + " " + e.getMessage());
        }
        SettleCheck check = new SettleCheck(settings, factor, unit);
        check.resolution(resolution);
        check.windows(chosen.huntingSeconds(), periodSeconds);
        return List.copyOf(check.problems);
    }

    private static String word(SettleKind kind) {
        return kind.name().toLowerCase(Locale.ROOT);
    }

    private void resolution(double resolution) {
        double drift = settings.driftLimit() * factor;
        if (drift < resolution * (1 - 1e-9)) {
            problem(
                    "drift " + number(drift) + " " + unit + " is under the gauge's step of " + number(resolution) + " "
                            + unit,
                    "at least " + number(resolution),
                    "take a larger limit, or a gauge that shows finer steps");
        }
        double band = settings.band() * factor;
        if (band < resolution / 2 * (1 - 1e-9)) {
            problem(
                    "band ±" + number(band) + " " + unit + " is under half the gauge's step of " + number(resolution)
                            + " " + unit,
                    "at least ±" + number(resolution / 2),
                    "take a wider band, or a gauge that shows finer steps");
        }
    }

    private void windows(double huntingSeconds, double periodSeconds) {
        List<Double> windows = settings.windowSeconds();
        double shortest = windows.get(0);
        double longest = windows.get(windows.size() - 1);
        if (settings.horizonSeconds() < shortest) {
            problem(
                    "horizon " + number(settings.horizonSeconds()) + " s is shorter than the shortest window of "
                            + number(shortest) + " s",
                    "at least " + number(shortest) + " s",
                    "look further ahead, or take a shorter window");
        }
        if (settings.dwellSeconds() > settings.horizonSeconds()) {
            problem(
                    "dwell " + number(settings.dwellSeconds()) + " s is longer than the horizon of "
                            + number(settings.horizonSeconds()) + " s, for which a proof stands",
                    "at most " + number(settings.horizonSeconds()) + " s",
                    "wait less, or look further ahead");
        }
        if (longest < PERIODS_IN_WINDOW * huntingSeconds) {
            problem(
                    "window " + number(longest) + " s, the longest, is under three periods of hunting of "
                            + number(huntingSeconds) + " s",
                    "at least " + number(PERIODS_IN_WINDOW * huntingSeconds) + " s",
                    "add a longer window, or the swings are taken for drift");
        }
        if (longest < FEWEST_READINGS * periodSeconds) {
            problem(
                    "window " + number(longest) + " s, the longest, holds fewer than six readings of a gauge that gives"
                            + " one each " + number(periodSeconds) + " s",
                    "at least " + number(FEWEST_READINGS * periodSeconds) + " s",
                    "add a longer window, or have the gauge send more often");
        }
    }

    private void problem(String what, String expected, String remedy) {
        problems.add(word(kind) + " " + what + "; expected " + expected + ": " + remedy);
    }

    private static String number(double value) {
        return Reasons.digits(value);
    }
}
