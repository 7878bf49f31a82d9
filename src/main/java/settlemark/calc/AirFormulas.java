package settlemark.calc;

import static settlemark.calc.FormulaBuilder.formula;

import java.util.List;
import settlemark.measure.Unit;

/** The air side: rise, airflow, static pressure, fan laws. */
final class AirFormulas {
    /** Btu/(h cfm degF) of standard air: 60 min/h x 0.075 lb/ft3 x 0.24 Btu/(lb degF). */
    static final double SENSIBLE_FACTOR = 60 * 0.075 * 0.24;

    private static final double SI_FACTOR = SENSIBLE_FACTOR
            * Unit.ucum("[Btu_IT]/h").to(Unit.ucum("W")).slope()
            / Unit.ucum("[cft_i]/min").to(Unit.ucum("m3/s")).slope()
            * 1.8;
    private static final String STANDARD = "1.08 Btu/(h cfm degF) = 60 x 0.075 lb/ft3 x 0.24 Btu/(lb degF), with the"
            + " density by the standard atmosphere's pressure";
    private static final String VALID = "dry air near 70 degF; humid air carries about 2 % more";

    private AirFormulas() {}

    static List<Formula> all() {
        return List.of(
                formula("sensible-factor", "heat that air carries per volume and degree")
                        .number("altitude", "height above sea level", "m", "[ft_i]", -2000, 20_000)
                        .source(STANDARD)
                        .validity(VALID)
                        .gives("J/(m3.K)", "J/(m3.K)", "J/(m3.K)", v -> factor(v.of("altitude"))),
                formula("airflow", "airflow from the heat that it takes up and its rise")
                        .number("heat", "heat given to the air: input times efficiency", "W", "[Btu_IT]/h", 100, 1e8)
                        .number("rise", "supply less return", "K difference", "[degF]", 2, 200)
                        .number("altitude", "height above sea level", "m", "[ft_i]", -2000, 20_000)
                        .source(STANDARD)
                        .validity(VALID)
                        .warns(v -> List.of(
                                "the efficiency behind the heat is an assumption unless combustion was" + " measured"))
                        .gives(
                                "m3/s",
                                "[cft_i]/min",
                                "m3/h",
                                v -> v.of("heat") / (factor(v.of("altitude")) * v.of("rise"))),
                formula("airflow-by-density", "airflow from heat, rise, density and specific heat of the air")
                        .number("heat", "heat given to the air", "W", "[Btu_IT]/h", 100, 1e8)
                        .number("rise", "supply less return", "K difference", "[degF]", 2, 200)
                        .number("density", "of the air where the flow is wanted", "kg/m3", "[lb_av]/[cft_i]", 0.03, 0.1)
                        .number("specific-heat", "of the air", "J/(kg.K)", "J/(kg.K)", 900, 1200)
                        .source("heat balance: V = P/(rho c dT)")
                        .validity("steady state")
                        .gives(
                                "m3/s",
                                "[cft_i]/min",
                                "m3/h",
                                v -> v.of("heat") / (v.of("density") * v.of("specific-heat") * v.of("rise"))),
                formula("electric-airflow", "airflow from electric heat and its rise")
                        .number("voltage", "at the heater", "V", "V", 1, 1000)
                        .number(
                                "current",
                                "of the heater, and of the blower where it is in the stream",
                                "A",
                                "A",
                                0.1,
                                1000)
                        .number("rise", "supply less return", "K difference", "[degF]", 2, 200)
                        .number("altitude", "height above sea level", "m", "[ft_i]", -2000, 20_000)
                        .source("electric power as heat; " + STANDARD)
                        .validity("resistive heat only, burner off, the blower at the speed of heating; " + VALID)
                        .gives(
                                "m3/s",
                                "[cft_i]/min",
                                "m3/h",
                                v -> v.of("voltage") * v.of("current") / (factor(v.of("altitude")) * v.of("rise"))),
                formula("temperature-rise", "rise to expect from heat and airflow")
                        .number("heat", "heat given to the air", "W", "[Btu_IT]/h", 100, 1e8)
                        .number("airflow", "air through the appliance", "m3/s", "[cft_i]/min", 10, 1e6)
                        .number("altitude", "height above sea level", "m", "[ft_i]", -2000, 20_000)
                        .source(STANDARD)
                        .validity(VALID)
                        .gives(
                                "K difference",
                                "[degF] difference",
                                "K difference",
                                v -> v.of("heat") / (factor(v.of("altitude")) * v.of("airflow"))),
                formula("external-static", "total external static pressure")
                        .number("supply", "static after the appliance, against the room", "Pa", "[in_i'H2O]", -5, 10)
                        .number("return", "static before it, against the room", "Pa", "[in_i'H2O]", -10, 5)
                        .source("definition: supply less return, both against the room")
                        .validity("filter as the plate counts it; common practice: most plates allow 0.5 inH2O")
                        .gives("Pa", "[in_i'H2O]", "Pa", v -> v.of("supply") - v.of("return")),
                formula("fan-law", "static pressure of the same duct at another airflow")
                        .number("flow-ratio", "new airflow over the old", "1", "1", 0.1, 5)
                        .number("pressure", "static pressure at the old airflow", "Pa", "[in_i'H2O]", 0.001, 20)
                        .source("fan laws: pressure goes with the square of the flow")
                        .validity("same system and density, turbulent flow")
                        .gives(
                                "Pa",
                                "[in_i'H2O]",
                                "Pa",
                                v -> v.of("pressure") * v.of("flow-ratio") * v.of("flow-ratio")),
                formula("fan-power", "fan power at another airflow")
                        .number("flow-ratio", "new airflow over the old", "1", "1", 0.1, 5)
                        .number("power", "at the old airflow", "W", "W", 1, 1e6)
                        .source("fan laws: power goes with the cube of the flow")
                        .validity("same system, density and fan efficiency; not for blowers that hold their airflow")
                        .gives("W", "W", "W", v -> v.of("power") * Math.pow(v.of("flow-ratio"), 3)),
                formula("rise-target", "rise to set where the plate gives a range")
                        .number("lower", "lower end of the plate's range", "K difference", "[degF]", 5, 200)
                        .number("upper", "upper end of the plate's range", "K difference", "[degF]", 5, 200)
                        .source(
                                "10 CFR 430 Subpart B Appendix N, 7.5: the higher of (max - 15 degF) and (min + 15 degF)")
                        .validity("a laboratory's target; in the field the whole range of the plate is good")
                        .gives(
                                "K difference",
                                "[degF] difference",
                                "K difference",
                                v -> Math.max(v.of("upper") - 15 / 1.8, v.of("lower") + 15 / 1.8)));
    }

    /** J/(m3 K). */
    static double factor(double metres) {
        return SI_FACTOR * AltitudeFormulas.pressureRatio(metres);
    }
}
