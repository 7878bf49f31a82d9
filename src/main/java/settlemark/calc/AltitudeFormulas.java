package settlemark.calc;

import static settlemark.calc.FormulaBuilder.formula;

import java.util.List;

/** The atmosphere, and what height does to a rating. */
final class AltitudeFormulas {
    static final String NONE = "none";
    static final String NFPA_54 = "nfpa-54";
    /** The same rule, named by what it takes off. */
    static final String FOUR_PERCENT = "4-percent-per-1000-ft";

    static final String MAKER = "maker";

    private static final double SEA_LEVEL_PA = 14.696 * 6894.757293168361;
    private static final double PER_FOOT = 6.8754e-6;
    private static final double EXPONENT = 5.2559;
    private static final double METRES_PER_FOOT = 0.3048;
    private static final String ATMOSPHERE =
            "US Standard Atmosphere 1976 as ASHRAE Handbook Fundamentals prints it: 14.696 (1 - 6.8754e-6 Z)^5.2559 psia";

    private AltitudeFormulas() {}

    static List<Formula> all() {
        return List.of(
                formula("standard-atmosphere", "pressure of the standard atmosphere")
                        .number("altitude", "height above sea level", "m", "[ft_i]", -2000, 36_000)
                        .source(ATMOSPHERE)
                        .validity("-2000 to 36000 ft; the day's own station pressure is better where it is known")
                        .gives("Pa", "[psi]", "kPa", v -> SEA_LEVEL_PA * pressureRatio(v.of("altitude"))),
                formula("density-ratio", "density of the standard atmosphere over that at sea level")
                        .number("altitude", "height above sea level", "m", "[ft_i]", -2000, 36_000)
                        .source("US Standard Atmosphere 1976, density exponent 4.2559")
                        .validity("-2000 to 36000 ft, standard day")
                        .givesNumber(v -> Math.pow(1 - PER_FOOT * v.of("altitude") / METRES_PER_FOOT, EXPONENT - 1)),
                formula("standard-air-density", "density of the standard atmosphere")
                        .number("altitude", "height above sea level", "m", "[ft_i]", -2000, 36_000)
                        .source("US Standard Atmosphere 1976: 1.225 kg/m3 at sea level, density exponent 4.2559")
                        .validity("-2000 to 36000 ft, standard day, dry")
                        .gives(
                                "kg/m3",
                                "[lb_av]/[cft_i]",
                                "kg/m3",
                                v -> 1.225 * Math.pow(1 - PER_FOOT * v.of("altitude") / METRES_PER_FOOT, EXPONENT - 1)),
                formula("band-rate", "burner rate at altitude by whole thousands of feet")
                        .number("rate", "at sea level", "W", "[Btu_IT]/h", 100, 1e8)
                        .number("altitude", "height above sea level", "m", "[ft_i]", 0, 10_000)
                        .source("NFPA 54 Annex E Table E.1.1(d): 4 % less for each whole 1000 ft")
                        .validity("the table's own bands; where the derate of 4 % per 1000 ft is in force")
                        .gives(
                                "W",
                                "[Btu_IT]/h",
                                "kW",
                                v -> v.of("rate") * (1 - 0.04 * wholeThousands(v.of("altitude")))),
                formula("derate", "share of the sea-level rating that is left at altitude")
                        .number("altitude", "height above sea level", "m", "[ft_i]", -2000, 20_000)
                        .choice(
                                "rule",
                                "the rule in force: nfpa-54 takes 4 % per 1000 ft above sea level from 2000 ft; maker needs"
                                        + " factor",
                                NONE,
                                NFPA_54,
                                FOUR_PERCENT,
                                MAKER)
                        .optional("factor", "the maker's own factor, with rule maker", "1", "1", 0.1, 1)
                        .source("NFPA 54, high altitude: 4 % for each 1000 ft above sea level, only above 2000 ft")
                        .validity("the rating plate and the maker's instructions win; not on top of a heating value as"
                                + " delivered")
                        .warns(AltitudeFormulas::derateWarnings)
                        .givesNumber(v -> derate(v.of("altitude"), v.choice("rule"), v.of("factor", Double.NaN))),
                formula("moist-air-density", "density of moist air")
                        .number("pressure", "absolute pressure", "Pa", "[psi]", 5, 16)
                        .number("temperature", "dry bulb", "K", "[degF]", -40, 250)
                        .number("humidity", "relative humidity", "1", "%", 0, 100)
                        .source("ideal gas law with water vapour, saturation pressure by Hyland and Wexler (ASHRAE"
                                + " Handbook Fundamentals, coefficients from memory)")
                        .validity("0 to 200 degC for the saturation pressure over water")
                        .gives(
                                "kg/m3",
                                "[lb_av]/[cft_i]",
                                "kg/m3",
                                v -> MoistAir.density(v.of("pressure"), v.of("temperature"), v.of("humidity"))));
    }

    /** Pressure over that at sea level. */
    static double pressureRatio(double metres) {
        return Math.pow(1 - PER_FOOT * metres / METRES_PER_FOOT, EXPONENT);
    }

    /** Whole thousands of feet in a height in metres. */
    static double wholeThousands(double metres) {
        return Math.floor(metres / METRES_PER_FOOT / 1000 + 1e-9);
    }

    private static double derate(double metres, String rule, double factor) {
        double feet = metres / METRES_PER_FOOT;
        return switch (rule) {
            case NFPA_54, FOUR_PERCENT -> feet > 2000 + 1e-9 ? 1 - 0.04 * feet / 1000 : 1;
            case MAKER -> factor;
            default -> 1;
        };
    }

    private static List<String> derateWarnings(Values values) {
        if (values.choice("rule").equals(MAKER) && !values.has("factor")) {
            return List.of("rule maker needs factor, the maker's own figure for this altitude");
        }
        return List.of("makers differ: the rating plate and the maker's instructions win");
    }
}
