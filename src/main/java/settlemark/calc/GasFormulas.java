package settlemark.calc;

import static settlemark.calc.FormulaBuilder.formula;

import java.util.ArrayList;
import java.util.List;

/** Gas that passes and the heat that it carries. */
final class GasFormulas {
    private static final String IDEAL = "ideal gas; near atmospheric pressure";

    private GasFormulas() {}

    static List<Formula> all() {
        return List.of(
                formula("gas-flow", "gas rate from clocking a meter")
                        .number("volume", "gas that passed, by whole turns of the dial", "m3", "[cft_i]", 1e-4, 1e5)
                        .number("time", "time that it took", "s", "s", 1, 86_400)
                        .source("definition: volume over time")
                        .validity("at the meter's own conditions; all other gas loads and pilots off")
                        .warns(values -> values.of("time") < 30
                                ? List.of("clocked for less than 30 s: let the dial turn longer (common practice: two"
                                        + " turns or more)")
                                : List.of())
                        .gives("m3/s", "[cft_i]/h", "m3/h", v -> v.of("volume") / v.of("time")),
                formula("heat-input", "heat that the gas carries")
                        .number("flow", "gas rate", "m3/s", "[cft_i]/h", 0.1, 1e6)
                        .number(
                                "heating-value",
                                "heat per volume, on the same basis as the flow",
                                "J/m3",
                                "[Btu_IT]/[cft_i]",
                                50,
                                4000)
                        .source("definition: flow times heating value")
                        .validity("flow and heating value on the same basis: both as metered, or both at standard"
                                + " conditions; gross or net as the heating value is")
                        .warns(values -> List.of("a heating value as delivered at altitude already holds the thinner"
                                + " air: do not correct the flow or derate on top of it"))
                        .gives("W", "[Btu_IT]/h", "kW", v -> v.of("flow") * v.of("heating-value")),
                formula("pressure-factor", "metered volume to the base pressure")
                        .number("atmospheric", "station pressure, not sea-level weather", "Pa", "[psi]", 5, 16)
                        .number("gauge", "gas pressure at the meter", "Pa", "[psi]", -1, 150)
                        .number("base", "base pressure", "Pa", "[psi]", 14, 15.5)
                        .source("ideal gas law; bases of NAESB 2.3.9 (14.73 psia) and ISO 13443 (101.325 kPa)")
                        .validity(IDEAL)
                        .warns(values -> List.of("not for a meter that corrects its pressure itself or has a fixed"
                                + " pressure factor"))
                        .givesNumber(v -> (v.of("atmospheric") + v.of("gauge")) / v.of("base")),
                formula("temperature-factor", "metered volume to the base temperature")
                        .number("temperature", "gas at the meter", "K", "[degF]", -60, 200)
                        .number("base", "base temperature", "K", "[degF]", 30, 80)
                        .source("ideal gas law")
                        .validity(IDEAL)
                        .warns(values -> List.of("not for a temperature-compensated meter"))
                        .givesNumber(v -> v.of("base") / v.of("temperature")),
                formula("volume-ratio", "volume at another pressure and temperature over the first")
                        .number("pressure", "absolute pressure", "Pa", "[psi]", 5, 160)
                        .number("temperature", "of the gas", "K", "[degF]", -60, 200)
                        .number("to-pressure", "the other absolute pressure", "Pa", "[psi]", 5, 160)
                        .number("to-temperature", "the other temperature", "K", "[degF]", -60, 200)
                        .source("ideal gas law")
                        .validity(IDEAL)
                        .givesNumber(v ->
                                v.of("pressure") / v.of("to-pressure") * v.of("to-temperature") / v.of("temperature")),
                formula("wobbe", "Wobbe index")
                        .number("heating-value", "heat per volume", "J/m3", "[Btu_IT]/[cft_i]", 50, 4000)
                        .number("relative-density", "density over that of air", "1", "1", 0.05, 3)
                        .source("ISO 6976: heating value over the root of the relative density")
                        .validity("gross or net as the heating value is")
                        .gives(
                                "J/m3",
                                "[Btu_IT]/[cft_i]",
                                "MJ/m3",
                                v -> v.of("heating-value") / Math.sqrt(v.of("relative-density"))),
                formula("saturated-heating-value", "heating value of gas saturated with water")
                        .number("heating-value", "heat per volume of the dry gas", "J/m3", "[Btu_IT]/[cft_i]", 50, 4000)
                        .number("pressure", "absolute pressure of the gas", "Pa", "[psi]", 5, 160)
                        .number("vapour-pressure", "of water at the gas temperature", "Pa", "[psi]", 0, 2)
                        .source("Dalton's law, as GPA 2172 uses it (from memory)")
                        .validity(IDEAL)
                        .gives(
                                "J/m3",
                                "[Btu_IT]/[cft_i]",
                                "MJ/m3",
                                v -> v.of("heating-value") * (1 - v.of("vapour-pressure") / v.of("pressure"))),
                formula("input-agreement", "how far two clocked rates lie apart, over their mean")
                        .number("first", "gas rate of the first run", "m3/s", "[cft_i]/h", 0.1, 1e6)
                        .number("second", "gas rate of the second run", "m3/s", "[cft_i]/h", 0.1, 1e6)
                        .source("two successive input rates within 2 %: 10 CFR 431 Subpart G Appendix A, 5.3")
                        .validity("both runs at the same stage, warm")
                        .warns(GasFormulas::agreement)
                        .gives(
                                "1",
                                "%",
                                "%",
                                v -> Math.abs(v.of("first") - v.of("second"))
                                        / ((v.of("first") + v.of("second")) / 2)));
    }

    private static List<String> agreement(Values values) {
        List<String> said = new ArrayList<>();
        double apart =
                Math.abs(values.of("first") - values.of("second")) / ((values.of("first") + values.of("second")) / 2);
        if (apart > 0.02) {
            said.add("the two runs lie more than 2 % apart: clock a third");
        }
        return said;
    }
}
