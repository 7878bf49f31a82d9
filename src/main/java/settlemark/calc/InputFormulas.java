package settlemark.calc;

import static settlemark.calc.FormulaBuilder.formula;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The clocked input and what the plate says to it. */
final class InputFormulas {
    private static final String DELIVERED = "as-delivered";
    private static final String STANDARD = "standard";
    private static final String PLAIN = "plain";
    private static final String COMPENSATED = "temperature-compensated";
    private static final String FIXED = "fixed-factor";
    private static final double PLATE_WITHIN = 0.02;

    private InputFormulas() {}

    static List<Formula> all() {
        return List.of(standardFlow(), clockedInput(), againstPlate());
    }

    private static Formula standardFlow() {
        return formula("standard-flow", "metered gas rate at standard conditions")
                .number("flow", "gas rate by the meter's index", "m3/s", "[cft_i]/h", 0.1, 1e6)
                .choice("meter", "what the meter does itself", PLAIN, COMPENSATED, FIXED)
                .number("atmospheric", "station pressure, not sea-level weather", "Pa", "[psi]", 5, 16)
                .number("gauge", "gas pressure at the meter", "Pa", "[psi]", -1, 150)
                .number("base-pressure", "base pressure", "Pa", "[psi]", 14, 15.5)
                .optional("temperature", "gas at the meter; not with a compensated one", "K", "[degF]", -60, 200)
                .number("base-temperature", "base temperature", "K", "[degF]", 30, 80)
                .source(
                        "ideal gas law; bases of NAESB 2.3.9 (14.73 psia, 60 degF) and ISO 13443 (101.325 kPa, 15 degC)")
                .validity("near atmospheric pressure; a meter with a fixed factor already shows the base pressure, a"
                        + " compensated one the base temperature")
                .refuses(InputFormulas::temperatureAtMeter)
                .warns(v -> List.of("for a heating value at the same standard conditions; not for one as delivered"))
                .gives("m3/s", "[cft_i]/h", "m3/h", InputFormulas::standardFlow);
    }

    private static List<String> temperatureAtMeter(Values v) {
        boolean compensated = v.choice("meter").equals(COMPENSATED);
        if (compensated && v.has("temperature")) {
            return List.of("temperature must be left out: a temperature-compensated meter must not be corrected again");
        }
        return compensated || v.has("temperature")
                ? List.of()
                : List.of("temperature is missing: gas at the meter, -60 to 200 [degF], unless the meter is "
                        + COMPENSATED);
    }

    private static double standardFlow(Values v) {
        double pressure =
                v.choice("meter").equals(FIXED) ? 1 : (v.of("atmospheric") + v.of("gauge")) / v.of("base-pressure");
        double temperature = v.has("temperature") ? v.of("base-temperature") / v.of("temperature") : 1;
        return v.of("flow") * pressure * temperature;
    }

    private static Formula clockedInput() {
        return formula("clocked-input", "input from clocking the meter")
                .number("volume", "gas that passed, by whole turns of the dial", "m3", "[cft_i]", 1e-4, 1e5)
                .number("time", "time that it took", "s", "s", 1, 86_400)
                .number("heating-value", "heat per volume", "J/m3", "[Btu_IT]/[cft_i]", 50, 4000)
                .choice("basis", "what volume the heating value is for", DELIVERED, STANDARD)
                .optional("factor", "metered volume to standard volume, with basis standard", "1", "1", 0.2, 12)
                .source("definition: volume over time, times heating value")
                .validity("all other gas loads and pilots off; gross or net as the heating value is")
                .refuses(InputFormulas::basis)
                .gives(
                        "W",
                        "[Btu_IT]/h",
                        "kW",
                        v -> v.of("volume") / v.of("time") * v.of("heating-value") * v.of("factor", 1));
    }

    private static List<String> basis(Values v) {
        boolean standard = v.choice("basis").equals(STANDARD);
        if (standard && !v.has("factor")) {
            return List.of("factor is missing: a heating value at standard conditions needs the metered volume"
                    + " corrected to them, 0.2 to 12");
        }
        return !standard && v.has("factor")
                ? List.of("factor must be left out: a heating value as delivered already holds pressure and"
                        + " temperature, both together would correct twice")
                : List.of();
    }

    private static Formula againstPlate() {
        return formula("input-against-plate", "input over what the plate allows at this altitude")
                .number("input", "clocked, on the plate's basis, gross or net", "W", "[Btu_IT]/h", 100, 1e8)
                .number("plate", "rating of the plate for this stage", "W", "[Btu_IT]/h", 100, 1e8)
                .number("altitude", "height above sea level", "m", "[ft_i]", -2000, 20_000)
                .choice(
                        "rule",
                        "the derate rule in force; maker needs factor",
                        AltitudeFormulas.NONE,
                        AltitudeFormulas.NFPA_54,
                        AltitudeFormulas.FOUR_PERCENT,
                        AltitudeFormulas.MAKER)
                .optional("factor", "the maker's own factor, with rule maker", "1", "1", 0.1, 1)
                .source(
                        "within 2 % of the rating after 15 min from cold: 10 CFR 430 Subpart B Appendix O, 2.4.1; derate by"
                                + " NFPA 54: 4 % for each 1000 ft above sea level, only above 2000 ft")
                .validity("the plate and the maker's instructions win over any rule")
                .refuses(AltitudeFormulas::makersFactor)
                .warns(InputFormulas::plateWarnings)
                .gives("1", "%", "%", InputFormulas::overPlate);
    }

    private static double overPlate(Values v) {
        double left = AltitudeFormulas.derate(v.of("altitude"), v.choice("rule"), v.of("factor", 1));
        return v.of("input") / (v.of("plate") * left);
    }

    private static List<String> plateWarnings(Values v) {
        List<String> said = new ArrayList<>();
        double apart = overPlate(v) - 1;
        String by = String.format(Locale.ROOT, "%.1f %%", Math.abs(apart) * 100);
        if (apart > PLATE_WITHIN) {
            said.add(by + " above the plate: never exceed the plate's input; check orifice, heating value and meter"
                    + " before the pressure");
        } else if (apart < -PLATE_WITHIN) {
            said.add(by + " below the plate: check orifice, heating value and meter before the pressure");
        }
        if (v.choice("rule").equals(AltitudeFormulas.NONE) && v.of("altitude") > 2000 * 0.3048) {
            said.add("above 2000 ft and no derate: only where the plate or the maker says so");
        }
        return said;
    }
}
