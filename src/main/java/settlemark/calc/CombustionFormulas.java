package settlemark.calc;

import static settlemark.calc.FormulaBuilder.formula;

import java.util.List;
import settlemark.measure.Unit;

/** What the flue gas says. */
final class CombustionFormulas {
    private static final double PERCENT = 0.01;
    private static final double PASCAL_PER_ATMOSPHERE = 101_325;
    private static final double CUBIC_METRES_PER_POUND_MOLE =
            379.49 * Unit.ucum("[cft_i]").to(Unit.ucum("m3")).slope();
    private static final double KILOGRAMS_PER_POUND = 0.45359237;
    private static final double WATER = 18.01528;

    private CombustionFormulas() {}

    static List<Formula> all() {
        return List.of(
                formula("excess-air", "air beyond what the fuel needs, over what it needs")
                        .number("oxygen", "in dry flue gas", "1", "%", 0, 20.5)
                        .choice("fuel", "the gas", Fuel.ALL)
                        .source("stoichiometry: O2/(21 - O2) times dry flue gas over air, 0.895 methane, 0.916 propane")
                        .validity("complete combustion; the simple O2/(21 - O2) reads 1/0.895 higher for methane")
                        .warns(v -> naturalAsMethane(v.choice("fuel")))
                        .gives("1", "%", "%", v -> excessAir(v.of("oxygen"), v.choice("fuel"))),
                formula("carbon-dioxide", "carbon dioxide in dry flue gas from its oxygen")
                        .number("oxygen", "in dry flue gas", "1", "%", 0, 21)
                        .choice("fuel", "the gas", Fuel.ALL)
                        .source("CO2max (21 - O2)/21; CO2max 11.73 % methane, 13.76 % propane by stoichiometry")
                        .validity("complete combustion")
                        .warns(v -> naturalAsMethane(v.choice("fuel")))
                        .gives(
                                "1",
                                "%",
                                "%",
                                v -> carbonDioxideMax(v.choice("fuel")) * (21 - v.of("oxygen") / PERCENT) / 21),
                formula("flue-oxygen", "oxygen in dry flue gas from its carbon dioxide")
                        .number("carbon-dioxide", "in dry flue gas", "1", "%", 0, 13.76)
                        .choice("fuel", "the gas", Fuel.ALL)
                        .source("21 (1 - CO2/CO2max); CO2max 11.73 % methane, 13.76 % propane by stoichiometry")
                        .validity("complete combustion; more carbon dioxide than the fuel can give is refused")
                        .warns(v -> naturalAsMethane(v.choice("fuel")))
                        .refuses(v -> v.of("carbon-dioxide") <= carbonDioxideMax(v.choice("fuel"))
                                ? List.of()
                                : List.of("carbon-dioxide is more than this fuel can give; look at fuel and analyser"))
                        .gives("1", "%", "%", CombustionFormulas::oxygen),
                formula("co-air-free", "carbon monoxide as it would be without excess air")
                        .number("co", "carbon monoxide in dry flue gas", "1", "[ppm]", 0, 100_000)
                        .number("oxygen", "in dry flue gas", "1", "%", 0, 20)
                        .source("CO x 20.9/(20.9 - O2)")
                        .validity("uncertain near 20.9 % oxygen")
                        .warns(CombustionFormulas::carbonMonoxide)
                        .gives("1", "[ppm]", "[ppm]", v -> airFree(v)),
                formula("flue-loss", "heat that dry flue gas carries off, of the net input (Siegert)")
                        .number("stack", "flue gas temperature", "K", "Cel", 20, 600)
                        .number("air", "combustion air temperature", "K", "Cel", -40, 60)
                        .number("oxygen", "in dry flue gas", "1", "%", 0, 20)
                        .number("carbon-dioxide", "in dry flue gas", "1", "%", 1, 15)
                        .choice("fuel", "the gas", Fuel.ALL)
                        .oneOf("oxygen", "carbon-dioxide")
                        .source("Siegert: (tA - tL)(A2/(21 - O2) + B) or (tA - tL)(A1/CO2 + B); A2 0.66, B 0.009"
                                + " natural gas, A2 0.63, B 0.008 liquefied gas (1. BImSchV); A1 0.37 and 0.42 from"
                                + " memory")
                        .validity("no condensation, so not the efficiency of a condensing appliance; net heating value")
                        .warns(v -> List.of("not an efficiency of a condensing appliance: condensation gives back heat"
                                + " that this does not know"))
                        .gives("1", "%", "%", CombustionFormulas::siegert),
                formula("stoichiometric-air", "air that a volume of fuel needs")
                        .choice("fuel", "the gas", Fuel.ALL)
                        .source("stoichiometry with 21 % oxygen in air")
                        .validity("complete combustion")
                        .warns(v -> naturalAsMethane(v.choice("fuel")))
                        .givesNumber(v -> oxygenNeed(v.choice("fuel")) / 0.21),
                formula("dry-flue-gas", "dry flue gas of a volume of fuel without excess air")
                        .choice("fuel", "the gas", Fuel.ALL)
                        .source("stoichiometry with 21 % oxygen in air")
                        .validity("complete combustion")
                        .warns(v -> naturalAsMethane(v.choice("fuel")))
                        .givesNumber(v -> dryFlueGas(v.choice("fuel"))),
                formula("wet-flue-gas", "flue gas with its water of a volume of fuel without excess air")
                        .choice("fuel", "the gas", Fuel.ALL)
                        .source("stoichiometry with 21 % oxygen in dry air")
                        .validity("complete combustion, no condensation")
                        .warns(v -> naturalAsMethane(v.choice("fuel")))
                        .givesNumber(v -> dryFlueGas(v.choice("fuel")) + water(v.choice("fuel"))),
                formula("flue-dew-point", "dew point of the flue gas")
                        .number("oxygen", "in dry flue gas", "1", "%", 0, 20)
                        .choice("fuel", "the gas", Fuel.ALL)
                        .source("stoichiometry, dry combustion air, saturation pressure by Hyland and Wexler")
                        .validity("at 101.325 kPa; humid air raises it")
                        .warns(v -> naturalAsMethane(v.choice("fuel")))
                        .gives("K", "[degF]", "Cel", CombustionFormulas::dewPoint),
                formula("condensate", "most water that the flue gas can give")
                        .number("heat-input", "gross", "W", "[Btu_IT]/h", 100, 1e8)
                        .number("heating-value", "gross", "J/m3", "[Btu_IT]/[cft_i]", 500, 4000)
                        .choice("fuel", "the gas", Fuel.ALL)
                        .source("stoichiometry; 379.49 ft3 in a pound mole at 60 degF and 14.696 psia")
                        .validity("all water condensed; a real appliance gives less")
                        .warns(v -> naturalAsMethane(v.choice("fuel")))
                        .gives("kg/s", "[lb_av]/h", "kg/h", CombustionFormulas::condensate));
    }

    private static List<String> naturalAsMethane(String fuel) {
        return fuel.equals(Fuel.NATURAL_GAS) ? List.of("natural gas reckoned as methane") : List.of();
    }

    private static boolean isPropane(String fuel) {
        return fuel.equals(Fuel.PROPANE);
    }

    private static double oxygenNeed(String fuel) {
        return isPropane(fuel) ? 5 : 2;
    }

    private static double carbon(String fuel) {
        return isPropane(fuel) ? 3 : 1;
    }

    private static double water(String fuel) {
        return isPropane(fuel) ? 4 : 2;
    }

    private static double dryFlueGas(String fuel) {
        return carbon(fuel) + oxygenNeed(fuel) * 0.79 / 0.21;
    }

    private static double carbonDioxideMax(String fuel) {
        return carbon(fuel) / dryFlueGas(fuel);
    }

    private static double excessAir(double oxygen, String fuel) {
        double air = oxygenNeed(fuel) / 0.21;
        return oxygen / (0.21 - oxygen) * dryFlueGas(fuel) / air;
    }

    private static double oxygen(Values v) {
        return 0.21 * (1 - v.of("carbon-dioxide") / carbonDioxideMax(v.choice("fuel")));
    }

    private static double airFree(Values v) {
        return v.of("co") * 20.9 / (20.9 - v.of("oxygen") / PERCENT);
    }

    private static List<String> carbonMonoxide(Values v) {
        double ppm = airFree(v) * 1e6;
        if (ppm > 400) {
            return List.of("above 400 ppm air-free (limit of ANSI Z21.47 for vented furnaces): shut off, tag, tell the"
                    + " customer and the gas supplier; a licensed person must put it right");
        }
        return ppm > 100 ? List.of("above 100 ppm air-free, where many field protocols act") : List.of();
    }

    private static double siegert(Values v) {
        boolean natural = !isPropane(v.choice("fuel"));
        double b = natural ? 0.009 : 0.008;
        double apart = v.of("stack") - v.of("air");
        double quotient = v.has("oxygen")
                ? (natural ? 0.66 : 0.63) / (21 - v.of("oxygen") / PERCENT)
                : (natural ? 0.37 : 0.42) / (v.of("carbon-dioxide") / PERCENT);
        return apart * (quotient + b) * PERCENT;
    }

    private static double dewPoint(Values v) {
        String fuel = v.choice("fuel");
        double air = excessAir(v.of("oxygen"), fuel) * oxygenNeed(fuel) / 0.21;
        double wet = water(fuel);
        return MoistAir.dewPoint(wet / (dryFlueGas(fuel) + air + wet) * PASCAL_PER_ATMOSPHERE);
    }

    private static double condensate(Values v) {
        double cubicMetresASecond = v.of("heat-input") / v.of("heating-value");
        double kilogramsPerCubicMetre =
                water(v.choice("fuel")) * WATER * KILOGRAMS_PER_POUND / CUBIC_METRES_PER_POUND_MOLE;
        return cubicMetresASecond * kilogramsPerCubicMetre;
    }
}
