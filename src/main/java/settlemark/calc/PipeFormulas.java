package settlemark.calc;

import static settlemark.calc.FormulaBuilder.formula;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import settlemark.measure.Unit;

/** The low-pressure pipe equation, both ways. */
final class PipeFormulas {
    private static final double CUBIC_METRES_A_SECOND =
            Unit.ucum("[cft_i]/h").to(Unit.ucum("m3/s")).slope();
    private static final double PASCAL_PER_INCH =
            Unit.INCH_OF_WATER.to(Unit.PASCAL).slope();
    private static final double METRES_PER_FOOT = 0.3048;
    /** Factor of the gas: density and viscosity. Methane counts as natural gas. */
    private static final Map<String, Double> CR =
            Map.of(Fuel.NATURAL_GAS, 0.6094, Fuel.METHANE, 0.6094, Fuel.PROPANE, 1.2462);

    private static final String SOURCE = "D = Q^0.381 / (19.17 (dH/(Cr L))^0.206), IFGC and NFPA 54, low pressure; Cr"
            + " 0.6094 natural gas, 1.2462 propane (from memory; within 0.9 % of IFGC 2018 Table 402.4(3), 402.4(4), and"
            + " 1.5 to 2.2 % above its propane table)";
    private static final String VALID = "below 1.5 psi; length with the equivalent length of fittings";

    private PipeFormulas() {}

    static List<Formula> all() {
        return List.of(
                run(formula("pipe-capacity", "gas rate that a pipe carries for a drop"))
                        .number("drop", "pressure drop over the pipe", "Pa", "[in_i'H2O]", 0.01, 40)
                        .choice("fuel", "the gas", Fuel.ALL)
                        .gives("m3/s", "[cft_i]/h", "m3/h", PipeFormulas::capacity),
                run(formula("pipe-drop", "pressure drop of a pipe for a gas rate"))
                        .number("flow", "gas rate", "m3/s", "[cft_i]/h", 1, 1e6)
                        .choice("fuel", "the gas", Fuel.ALL)
                        .gives("Pa", "[in_i'H2O]", "mbar", PipeFormulas::drop));
    }

    private static FormulaBuilder run(FormulaBuilder draft) {
        return draft.number("length", "of the pipe with its fittings", "m", "[ft_i]", 1, 10_000)
                .number("diameter", "inside", "m", "[in_i]", 0.1, 12)
                .source(SOURCE)
                .validity(VALID);
    }

    private static double capacity(Values v) {
        double feet = v.of("length") / METRES_PER_FOOT;
        double inches = v.of("diameter") / DrillSizes.METRES_PER_INCH;
        double drop = v.of("drop") / PASCAL_PER_INCH;
        double root = Math.pow(drop / (cr(v) * feet), 0.206);
        return Math.pow(19.17 * inches * root, 1 / 0.381) * CUBIC_METRES_A_SECOND;
    }

    private static double drop(Values v) {
        double feet = v.of("length") / METRES_PER_FOOT;
        double inches = v.of("diameter") / DrillSizes.METRES_PER_INCH;
        double flow = v.of("flow") / CUBIC_METRES_A_SECOND;
        double root = Math.pow(flow, 0.381) / (19.17 * inches);
        return Math.pow(root, 1 / 0.206) * cr(v) * feet * PASCAL_PER_INCH;
    }

    private static double cr(Values v) {
        return Objects.requireNonNull(CR.get(v.choice("fuel")));
    }
}
