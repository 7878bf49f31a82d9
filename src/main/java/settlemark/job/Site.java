package settlemark.job;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import settlemark.calc.Formulas;
import settlemark.calc.Inputs;
import settlemark.calc.RefusedInputException;
import settlemark.measure.Quantity;
import settlemark.measure.Unit;

/**
 * How high an appliance stands, and what of its rated input is left there. The maker's own instruction comes first; the common
 * rule of 4 % for each 1000 ft above sea level, from 2000 ft upwards, is NFPA 54's.
 *
 * @param altitudeFeet above sea level, -2000 to 20,000; NaN where nobody has said
 * @param derating what takes something off
 * @param factor the maker's own share that is left, 0.1 to 1; NaN for every other derating
 */
public record Site(double altitudeFeet, Derating derating, double factor) {
    /** Nobody has said: nothing is taken off. */
    public static final Site UNKNOWN = new Site(Double.NaN, Derating.NONE, Double.NaN);

    static final Unit FOOT = Unit.ucum("[ft_i]");
    private static final Unit ONE = Unit.ucum("1");
    private static final double LOWEST_FEET = -2000;
    private static final double HIGHEST_FEET = 20_000;
    private static final double LEAST_FACTOR = 0.1;
    /** Below this no rule takes anything off. */
    static final double FREE_FEET = 2000;

    /** Who says what is taken off. */
    public enum Derating {
        /** Nothing is taken off. */
        NONE("none"),
        /** 4 % for each 1000 ft above sea level, from 2000 ft upwards. */
        COMMON_PRACTICE("4-percent-per-1000-ft"),
        /** The maker's own figure for this altitude. */
        MAKER("maker");

        private final String rule;

        Derating(String rule) {
            this.rule = rule;
        }
    }

    public Site {
        Objects.requireNonNull(derating);
        boolean known = !Double.isNaN(altitudeFeet);
        if (known) {
            refuse(altitudeProblem(altitudeFeet));
        }
        if (!known && derating != Derating.NONE) {
            throw new IllegalArgumentException("a derating is one for an altitude; say how high the place lies");
        }
        refuse(factorProblem(derating, factor));
    }

    private static void refuse(Optional<String> problem) {
        if (problem.isPresent()) {
            throw new IllegalArgumentException(problem.get());
        }
    }

    /** What is wrong with an altitude, in words. */
    static Optional<String> altitudeProblem(double feet) {
        return feet >= LOWEST_FEET && feet <= HIGHEST_FEET
                ? Optional.empty()
                : Optional.of(
                        String.format(Locale.ROOT, "an altitude lies between -2000 and 20000 ft, got %.0f ft", feet));
    }

    /**
     * What is wrong with a factor beside a derating, in words.
     *
     * @param factor NaN where none is said
     */
    static Optional<String> factorProblem(Derating derating, double factor) {
        boolean maker = derating == Derating.MAKER;
        if (maker && !(factor >= LEAST_FACTOR && factor <= 1)) {
            return Optional.of(
                    "the maker's derating needs its factor, the share that is left, 0.1 to 1, got " + factor);
        }
        return maker || Double.isNaN(factor)
                ? Optional.empty()
                : Optional.of("a factor is the maker's own: say so, or leave the factor out");
    }

    /** Whether somebody has said how high it lies. */
    public boolean known() {
        return !Double.isNaN(altitudeFeet);
    }

    /** What is left of a rated input, 1 where nothing is taken off. */
    public double share() {
        if (!known()) {
            return 1;
        }
        try {
            return Formulas.find("derate")
                    .orElseThrow()
                    .of(into(Inputs.none()))
                    .quantity()
                    .value();
        } catch (RefusedInputException e) {
            throw new IllegalStateException("an altitude that was checked is refused: " + e.getMessage(), e);
        }
    }

    /** As inputs of the formulas of altitude. */
    Inputs into(Inputs inputs) {
        Inputs with = inputs.with("altitude", new Quantity(known() ? altitudeFeet : 0, 0, FOOT))
                .with("rule", derating.rule);
        return derating == Derating.MAKER ? with.with("factor", new Quantity(factor, 0, ONE)) : with;
    }

    /** For people: how high, what is left, and who says so. */
    public String words() {
        if (!known()) {
            return "altitude not said";
        }
        String high = String.format(Locale.ROOT, "%.0f ft", altitudeFeet);
        return switch (derating) {
            case NONE -> high + ", no derating";
            case COMMON_PRACTICE ->
                String.format(
                        Locale.ROOT,
                        "%s, %.3f of the rating left by common practice (4 %% per 1000 ft from 2000 ft, NFPA 54)",
                        high,
                        share());
            case MAKER -> String.format(Locale.ROOT, "%s, %.3f of the rating left by its maker", high, share());
        };
    }
}
