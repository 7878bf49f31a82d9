package settlemark.calc;

import static settlemark.calc.FormulaBuilder.formula;

import java.util.ArrayList;
import java.util.List;

/** What a shut valve lets by. */
final class LetByFormulas {
    private LetByFormulas() {}

    static List<Formula> all() {
        return List.of(
                formula("let-by", "gas that a shut valve lets by, from a trapped inlet")
                        .number("volume", "trapped between cock and valve", "m3", "[cft_i]", 1e-4, 100)
                        .number("drop", "fall of the trapped pressure; a rise is negative", "Pa", "[in_i'H2O]", -40, 40)
                        .number("time", "from the cock's shutting to the last reading", "s", "s", 10, 86_400)
                        .number("atmospheric", "station pressure", "Pa", "[psi]", 7, 16)
                        .optional(
                                "warming", "of the trapped gas; cooling is negative", "K difference", "[degF]", -40, 40)
                        .optional("temperature", "of the trapped gas, with warming", "K", "[degF]", -40, 140)
                        .source("ideal gas law: V (dP + P dT/T)/(P t)")
                        .validity("cock shut and tight, valve off, nothing else on the trapped pipe; 1 degF of warming"
                                + " raises the gauge by about 0.8 inH2O")
                        .refuses(v -> v.has("warming") && !v.has("temperature")
                                ? List.of("temperature is missing: that of the trapped gas, with warming")
                                : List.of())
                        .warns(LetByFormulas::warnings)
                        .gives("m3/s", "[cft_i]/h", "m3/h", LetByFormulas::rate),
                formula("let-by-manifold", "manifold pressure that a let-by would show, the burners being open holes")
                        .number("let-by", "gas that the valve lets by", "m3/s", "[cft_i]/h", 1e-4, 1e4)
                        .number("flow", "gas rate in service", "m3/s", "[cft_i]/h", 0.1, 1e6)
                        .number("pressure", "manifold pressure in service", "Pa", "[in_i'H2O]", 0.01, 60)
                        .source("flow follows the root of the drop, Bernoulli")
                        .validity("same orifices")
                        .warns(v ->
                                List.of("a manifold at 0 does not prove a tight valve: test with the trapped inlet"))
                        .gives(
                                "Pa",
                                "[in_i'H2O]",
                                "Pa",
                                v -> v.of("pressure") * Math.pow(v.of("let-by") / v.of("flow"), 2)));
    }

    private static double rate(Values v) {
        double pressure = v.of("atmospheric");
        double thermal = v.has("warming") ? pressure * v.of("warming") / v.of("temperature") : 0;
        return v.of("volume") * (v.of("drop") + thermal) / (pressure * v.of("time"));
    }

    private static List<String> warnings(Values v) {
        List<String> said = new ArrayList<>();
        if (!v.has("warming")) {
            said.add("no warming given: taken as none; 1 degF moves the gauge by about 0.8 inH2O");
        }
        if (rate(v) < 0) {
            said.add("the pressure rose: the cock lets gas by, or the pipe grew warmer than given");
        }
        said.add(
                "a valve that lets by more than its standard allows: shut off, tag, tell the customer and the supplier");
        return said;
    }
}
