package settlemark.calc;

import static settlemark.calc.FormulaBuilder.formula;

import java.util.List;

/** Leaks from the fall of a trapped pressure. */
final class TightnessFormulas {
    private static final double STANDARD_ATMOSPHERE_PA = 101_325;

    private TightnessFormulas() {}

    static List<Formula> all() {
        return List.of(
                formula("leak-rate", "leak from the fall of a trapped pressure")
                        .number("volume", "of the pipework under test", "m3", "m3", 1e-5, 100)
                        .number("drop", "fall of the pressure; a rise is negative", "Pa", "mbar", -100, 100)
                        .number("time", "of the test", "s", "min", 0.1, 10_000)
                        .optional("atmospheric", "station pressure", "Pa", "mbar", 500, 1100)
                        .source("ideal gas law: V dP/(P t)")
                        .validity("temperature and barometer steady during the test: 1 K moves 3.5 mbar, 1 mbar of"
                                + " barometer moves the gauge by 1 mbar")
                        .warns(TightnessFormulas::leakWarnings)
                        .gives(
                                "m3/s",
                                "[cft_i]/h",
                                "m3/h",
                                v -> v.of("volume")
                                        * v.of("drop")
                                        / (v.of("atmospheric", STANDARD_ATMOSPHERE_PA) * v.of("time"))),
                formula("corrected-drop", "fall of a trapped pressure without what temperature and barometer did")
                        .number("gauge", "pressure at the start", "Pa", "mbar", 0, 7000)
                        .number("gauge-after", "pressure at the end", "Pa", "mbar", 0, 7000)
                        .number("barometer", "station pressure at the start", "Pa", "mbar", 500, 1100)
                        .number("barometer-after", "station pressure at the end", "Pa", "mbar", 500, 1100)
                        .number("temperature", "of the pipework at the start", "K", "Cel", -40, 60)
                        .number("temperature-after", "of the pipework at the end", "K", "Cel", -40, 60)
                        .source("ideal gas law: (Pg1 + Pb1) - (Pg2 + Pb2) T1/T2")
                        .validity("the temperature is that of the gas in the pipe")
                        .gives(
                                "Pa",
                                "[in_i'H2O]",
                                "mbar",
                                v -> v.of("gauge")
                                        + v.of("barometer")
                                        - (v.of("gauge-after") + v.of("barometer-after"))
                                                * v.of("temperature")
                                                / v.of("temperature-after")),
                formula("test-time", "how long a test must run for the gauge to see a leak")
                        .number("volume", "of the pipework under test", "m3", "m3", 1e-5, 100)
                        .number("leak", "smallest leak that must be seen", "m3/s", "m3/h", 1e-6, 10)
                        .number("readable", "smallest fall that the gauge shows for certain", "Pa", "mbar", 1e-3, 100)
                        .number("atmospheric", "station pressure", "Pa", "mbar", 500, 1100)
                        .source("ideal gas law: V dP/(P Q)")
                        .validity("temperature and barometer steady; never shorter than the code's own time")
                        .gives(
                                "s",
                                "min",
                                "min",
                                v -> v.of("volume") * v.of("readable") / (v.of("atmospheric") * v.of("leak"))),
                formula("thermal-drift", "change of a trapped pressure per degree")
                        .number("pressure", "absolute pressure", "Pa", "mbar", 500, 8000)
                        .number("temperature", "of the gas", "K", "Cel", -40, 60)
                        .source("ideal gas law: P/T")
                        .validity("closed volume")
                        .gives("Pa/K", "Pa/K", "Pa/K", v -> v.of("pressure") / v.of("temperature")));
    }

    private static List<String> leakWarnings(Values v) {
        if (v.has("atmospheric")) {
            return v.of("drop") < 0 ? gain() : List.of();
        }
        String assumed = "atmospheric pressure taken as 1013.25 mbar";
        return v.of("drop") < 0 ? List.of(assumed, gain().get(0)) : List.of(assumed);
    }

    private static List<String> gain() {
        return List.of("the pressure rose: a shut valve lets gas by, or the pipe grew warmer");
    }
}
