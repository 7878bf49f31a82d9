package settlemark.calc;

import static settlemark.calc.FormulaBuilder.formula;

import java.util.Arrays;
import java.util.List;

/** Gas properties by the name of a test gas. */
final class TestGasFormulas {
    static final String GROSS = "gross";
    static final String NET = "net";
    private static final String[] NAMES =
            Arrays.stream(TestGas.values()).map(TestGas::name).toArray(String[]::new);
    private static final double JOULES = 1e6;
    private static final String SOURCE = "EN 437, Tables 2 and 3";
    private static final String VALID = "dry gas at 15 degC and 1013.25 mbar; a gas main carries a gas like it, not the"
            + " test gas: the supplier's figure wins";

    private TestGasFormulas() {}

    static List<Formula> all() {
        return List.of(
                named(formula("test-gas-heating-value", "heating value of a test gas"))
                        .choice("basis", "with the water's heat or without", GROSS, NET)
                        .gives("J/m3", "MJ/m3", "MJ/m3", TestGasFormulas::heatingValue),
                named(formula("test-gas-relative-density", "density of a test gas over that of air"))
                        .givesNumber(v -> gas(v).relativeDensity),
                named(formula("test-gas-wobbe", "Wobbe index of a test gas"))
                        .choice("basis", "with the water's heat or without", GROSS, NET)
                        .gives("J/m3", "MJ/m3", "MJ/m3", v -> heatingValue(v) / Math.sqrt(gas(v).relativeDensity)));
    }

    private static FormulaBuilder named(FormulaBuilder draft) {
        return draft.choice("gas", "test gas of EN 437", NAMES)
                .source(SOURCE)
                .validity(VALID)
                .warns(v -> gas(v).printed
                        ? List.of()
                        : List.of("the figures of " + gas(v).name()
                                + " are from memory: check them against the standard"));
    }

    private static TestGas gas(Values v) {
        return TestGas.valueOf(v.choice("gas"));
    }

    private static double heatingValue(Values v) {
        TestGas gas = gas(v);
        return JOULES * (v.choice("basis").equals(NET) ? gas.netMegajoules : gas.grossMegajoules);
    }
}
