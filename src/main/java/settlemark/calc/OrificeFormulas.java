package settlemark.calc;

import static settlemark.calc.FormulaBuilder.formula;

import java.util.List;
import settlemark.measure.Unit;

/** Flow through burner orifices. */
final class OrificeFormulas {
    /**
     * Cubic feet an hour through one square inch at one inch of water and relative density 1. The constant of the printed
     * orifice tables of NFPA 54 Annex E (from memory; it gives their figures to 0.07 %); first principles with air at 60
     * degF give 1654 to 1656.
     */
    static final double FLOW_CONSTANT = 1658.5;

    private static final double SQUARE_METRES_PER_SQUARE_INCH = DrillSizes.METRES_PER_INCH * DrillSizes.METRES_PER_INCH;
    private static final double PASCAL_PER_INCH =
            Unit.INCH_OF_WATER.to(Unit.PASCAL).slope();
    private static final double CUBIC_METRES_A_SECOND =
            Unit.ucum("[cft_i]/h").to(Unit.ucum("m3/s")).slope();
    private static final String SOURCE =
            "Q = 1658.5 K A sqrt(h/SG), the formula behind NFPA 54 Annex E Table E.1.1 (constant from memory)";
    private static final String VALID = "drop up to about 30 inH2O; gas near 60 degF and 30 inHg; the burner box at the"
            + " pressure that the manifold is read against";

    private OrificeFormulas() {}

    static List<Formula> all() {
        return List.of(
                withGas(formula("orifice-flow", "gas rate through an orifice"))
                        .number("pressure", "manifold pressure", "Pa", "[in_i'H2O]", 0.01, 60)
                        .oneOf("diameter", "drill")
                        .gives(
                                "m3/s",
                                "[cft_i]/h",
                                "m3/h",
                                v -> flow(area(v), v.of("pressure"), v.of("relative-density"), v.of("coefficient"))),
                withGas(formula("orifice-pressure", "manifold pressure for a wanted gas rate"))
                        .number("flow", "gas rate through one orifice", "m3/s", "[cft_i]/h", 1e-3, 1e5)
                        .oneOf("diameter", "drill")
                        .warns(values -> List.of("stay within the window of the plate and the valve: outside it change"
                                + " the orifice, not the pressure"))
                        .gives("Pa", "[in_i'H2O]", "mbar", OrificeFormulas::pressure),
                formula("orifice-diameter", "orifice for a wanted gas rate")
                        .number("flow", "gas rate through one orifice", "m3/s", "[cft_i]/h", 1e-3, 1e5)
                        .number("pressure", "manifold pressure", "Pa", "[in_i'H2O]", 0.01, 60)
                        .number("relative-density", "density over that of air", "1", "1", 0.05, 3)
                        .number("coefficient", "discharge coefficient", "1", "1", 0.5, 1)
                        .source(SOURCE)
                        .validity(VALID)
                        .gives("m", "[in_i]", "mm", OrificeFormulas::diameter),
                formula("input-ratio", "input at another manifold pressure over the first")
                        .number("pressure", "new manifold pressure", "Pa", "[in_i'H2O]", 0.01, 60)
                        .number("from", "manifold pressure before", "Pa", "[in_i'H2O]", 0.01, 60)
                        .source("flow follows the root of the drop, Bernoulli")
                        .validity("same orifice and gas")
                        .givesNumber(v -> Math.sqrt(v.of("pressure") / v.of("from"))),
                formula("stage-pressure", "manifold pressure of a stage from its share of the rate")
                        .number("pressure", "manifold pressure at full rate", "Pa", "[in_i'H2O]", 0.01, 60)
                        .number("rate", "rate of the stage over the full rate", "1", "1", 0.05, 1.5)
                        .source("flow follows the root of the drop, Bernoulli")
                        .validity("same orifices for both stages; the plate's own figure wins")
                        .gives("Pa", "[in_i'H2O]", "mbar", v -> v.of("pressure") * v.of("rate") * v.of("rate")),
                formula("conversion-area", "orifice area for another gas over the first, for the same input")
                        .number("wobbe", "Wobbe index of the first gas", "J/m3", "[Btu_IT]/[cft_i]", 100, 4000)
                        .number("new-wobbe", "Wobbe index of the new gas", "J/m3", "[Btu_IT]/[cft_i]", 100, 4000)
                        .number("pressure", "manifold pressure with the first gas", "Pa", "[in_i'H2O]", 0.01, 60)
                        .number("new-pressure", "manifold pressure with the new gas", "Pa", "[in_i'H2O]", 0.01, 60)
                        .source("A sqrt(p) W stays the same, from flow and the definition of the Wobbe index")
                        .validity("only with the appliance maker's conversion kit and instructions")
                        .givesNumber(v ->
                                v.of("wobbe") / v.of("new-wobbe") * Math.sqrt(v.of("pressure") / v.of("new-pressure"))),
                formula("altitude-drill", "number drill that replaces one at altitude")
                        .choice(
                                "drill",
                                "number drill at sea level",
                                DrillSizes.names().toArray(String[]::new))
                        .number("altitude", "height above sea level", "m", "[ft_i]", 0, 10_000)
                        .source("input less 4 % per 1000 ft, flow at the same manifold pressure less by the root of the"
                                + " pressure; meets NFPA 54 Annex E Table E.1.1(d) in the rows tested")
                        .validity("where the derate of 4 % per 1000 ft is in force; the maker's own rule wins")
                        .givesNumber(OrificeFormulas::altitudeDrill));
    }

    private static FormulaBuilder withGas(FormulaBuilder draft) {
        return draft.number("diameter", "diameter of the orifice", "m", "[in_i]", 0.005, 2)
                .choice("drill", "number drill 1 to 80", DrillSizes.names().toArray(String[]::new))
                .number("relative-density", "density over that of air", "1", "1", 0.05, 3)
                .number("coefficient", "discharge coefficient, 0.90 in the printed tables", "1", "1", 0.5, 1)
                .source(SOURCE)
                .validity(VALID);
    }

    /** Cubic metres a second. */
    static double flow(double squareMetres, double pressurePa, double relativeDensity, double coefficient) {
        double squareInches = squareMetres / SQUARE_METRES_PER_SQUARE_INCH;
        return FLOW_CONSTANT
                * coefficient
                * squareInches
                * Math.sqrt(pressurePa / PASCAL_PER_INCH / relativeDensity)
                * CUBIC_METRES_A_SECOND;
    }

    private static double area(Values v) {
        double metres = v.has("drill") ? DrillSizes.metres(Integer.parseInt(v.choice("drill"))) : v.of("diameter");
        return Math.PI * metres * metres / 4;
    }

    private static double pressure(Values v) {
        double unitFlow = flow(area(v), PASCAL_PER_INCH, v.of("relative-density"), v.of("coefficient"));
        double ratio = v.of("flow") / unitFlow;
        return ratio * ratio * PASCAL_PER_INCH;
    }

    private static double diameter(Values v) {
        double unitFlow = flow(1, v.of("pressure"), v.of("relative-density"), v.of("coefficient"));
        return Math.sqrt(4 * v.of("flow") / unitFlow / Math.PI);
    }

    private static double altitudeDrill(Values v) {
        double thousands = AltitudeFormulas.wholeThousands(v.of("altitude"));
        double wanted = 1 - 0.04 * thousands;
        double byItself = Math.sqrt(AltitudeFormulas.pressureRatio(thousands * 1000 * 0.3048));
        double metres = DrillSizes.metres(Integer.parseInt(v.choice("drill"))) * Math.sqrt(wanted / byItself);
        return DrillSizes.nearest(metres);
    }
}
