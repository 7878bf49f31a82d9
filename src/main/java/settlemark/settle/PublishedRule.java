package settlemark.settle;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import settlemark.measure.Dimension;

/**
 * When a published test calls its readings steady; named choices beside the statistical proof, which demands other things.
 *
 * <p>"Not more than" takes the limit itself in. Tolerances of temperatures are in degrees Fahrenheit, others a fraction. What
 * the published words leave open is said with each rule. None of them is about a gas pressure over seconds.
 */
public enum PublishedRule {
    /** The deviation is counted from the mean of the three. */
    THREE_READINGS_3_DEGF(
            "three-readings-3-degf",
            Dimension.TEMPERATURE,
            3,
            "three successive readings, 15 min apart, vary by not more than ±3 °F",
            "10 CFR 430 Subpart B Appendix O, 3.1.1: stack, with a draft diverter") {
        @Override
        RuleCourse course(double factor) {
            return new SpacedReadings("reading", QUARTER_SECONDS, 3, tolerance() * factor, false);
        }
    },
    /** The deviation is counted from the mean of the three. */
    THREE_READINGS_5_DEGF(
            "three-readings-5-degf",
            Dimension.TEMPERATURE,
            5,
            "three successive readings, 15 min apart, vary by not more than ±5 °F",
            "10 CFR 430 Subpart B Appendix O, 3.1.1: flue, with a draft hood, direct exhaust or direct vent") {
        @Override
        RuleCourse course(double factor) {
            return new SpacedReadings("reading", QUARTER_SECONDS, 3, tolerance() * factor, false);
        }
    },
    /** Counted from the first of the thirty minutes; that, and the thirty minutes, are from memory. */
    EVERY_MINUTE_HALF_DEGF(
            "every-minute-half-degf",
            Dimension.TEMPERATURE,
            0.5,
            "a reading each minute for 30 min, each within ±0.50 °F of the first",
            "10 CFR 431 Subpart G Appendix A, 5.1: below 500 000 Btu/h") {
        @Override
        RuleCourse course(double factor) {
            return new SpacedReadings("minute", MINUTE_SECONDS, MINUTES + 1, tolerance() * factor, true);
        }
    },
    /** Counted from the first of the thirty minutes; that, and the thirty minutes, are from memory. */
    EVERY_MINUTE_1_DEGF(
            "every-minute-1-degf",
            Dimension.TEMPERATURE,
            1,
            "a reading each minute for 30 min, each within ±1.00 °F of the first",
            "10 CFR 431 Subpart G Appendix A, 5.1: from 500 000 Btu/h") {
        @Override
        RuleCourse course(double factor) {
            return new SpacedReadings("minute", MINUTE_SECONDS, MINUTES + 1, tolerance() * factor, true);
        }
    },
    /** From memory: the operating tolerance of a dry-bulb temperature is the range of all readings. */
    HALF_HOUR_2_DEGF(
            "half-hour-2-degf",
            Dimension.TEMPERATURE,
            2,
            "all readings of 30 min lie within 2.0 °F, from the least to the most",
            "AHRI 210/240, operating tolerance of a dry-bulb temperature (from memory)") {
        @Override
        RuleCourse course(double factor) {
            return new QuietPeriod(MINUTE_SECONDS, MINUTES, tolerance() * factor);
        }
    },
    /** The difference is counted from the smaller of the two; what is measured must have a true zero. */
    RATES_2_PERCENT(
            "rates-2-percent",
            Dimension.PRESSURE,
            0.02,
            "two successive rates, each over 10 min, differ by not more than 2 %",
            "10 CFR 431 Subpart G Appendix A, 5.3") {
        @Override
        RuleCourse course(double factor) {
            return new SteadyRates(TEN_MINUTES_SECONDS, tolerance());
        }
    };

    private static final double QUARTER_SECONDS = 900;
    private static final double TEN_MINUTES_SECONDS = 600;
    private static final double MINUTE_SECONDS = 60;
    private static final int MINUTES = 30;

    private final String key;
    private final Dimension dimension;
    private final double tolerance;
    private final String words;
    private final String source;

    PublishedRule(String key, Dimension dimension, double tolerance, String words, String source) {
        this.key = key;
        this.dimension = dimension;
        this.tolerance = tolerance;
        this.words = words;
        this.source = source;
    }

    /** @param factor units of the samples in a degree Fahrenheit; no matter where the tolerance is a fraction */
    abstract RuleCourse course(double factor);

    /** Name by which a plan or a command chooses it. */
    public String key() {
        return key;
    }

    /** What it can be asked of: a temperature, or a pressure that stands for a rate. */
    public Dimension dimension() {
        return dimension;
    }

    /** Degrees Fahrenheit of a temperature, else a fraction. */
    public double tolerance() {
        return tolerance;
    }

    /** What it demands, in words. */
    public String words() {
        return words;
    }

    /** Who says so, and where. */
    public String source() {
        return source;
    }

    /** The rule of that name; empty where there is none. */
    public static Optional<PublishedRule> ofKey(String key) {
        return Stream.of(values()).filter(r -> r.key.equals(key)).findFirst();
    }

    /** All names, in order. */
    public static List<String> keys() {
        return Stream.of(values()).map(PublishedRule::key).toList();
    }
}
