package settlemark.calc;

import static settlemark.calc.FormulaBuilder.formula;

import java.util.List;

/** The water side of boilers and water heaters. */
final class WaterFormulas {
    private WaterFormulas() {}

    static List<Formula> all() {
        return List.of(formula("water-heat", "heat that flowing water takes up")
                .number("flow", "of the water", "m3/s", "[gal_us]/min", 0.01, 10_000)
                .number("rise", "outlet less inlet", "K difference", "[degF]", 0.5, 180)
                .number("density", "of the water", "kg/m3", "kg/m3", 940, 1010)
                .number("specific-heat", "of the water", "J/(kg.K)", "J/(kg.K)", 4150, 4260)
                .source("heat balance: V rho c dT")
                .validity("liquid water, steady state; glycol needs its own density and specific heat, which may lie"
                        + " outside these ranges")
                .gives(
                        "W",
                        "[Btu_IT]/h",
                        "kW",
                        v -> v.of("flow") * v.of("density") * v.of("specific-heat") * v.of("rise")));
    }
}
