package settlemark.calc;

import static settlemark.calc.FormulaBuilder.formula;

import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/** Gas properties from composition by ISO 6976:2016, combustion and metering both at 15 degC and 101.325 kPa. */
final class CompositionFormulas {
    private static final double GAS_CONSTANT = 8.3144621;
    private static final double KELVIN = 288.15;
    private static final double PASCAL = 101_325;
    private static final double MOLAR_MASS_OF_AIR = 28.96546;
    private static final double COMPRESSION_OF_AIR = 0.999595;
    /** Heat of evaporation of water at 15 degC, kJ/mol. */
    private static final double EVAPORATION = 44.431;

    private static final double SUM_WITHIN = 0.001;
    private static final String SOURCE = "ISO 6976:2016, tables as reproduced in open software; air 28.96546 g/mol, its"
            + " compression factor 0.999595, R 8.3144621 J/(mol K)";
    private static final String VALID = "mole fractions of a dry gas that sum to 100 %, compression factor above 0.9;"
            + " burnt and metered at 15 degC and 101.325 kPa";

    private CompositionFormulas() {}

    static List<Formula> all() {
        return List.of(
                mixed(formula("composition-heating-value", "heating value from composition"))
                        .choice("basis", "with the water's heat or without", TestGasFormulas.GROSS, TestGasFormulas.NET)
                        .gives("J/m3", "MJ/m3", "MJ/m3", CompositionFormulas::heatingValue),
                mixed(formula("composition-relative-density", "density over that of air from composition"))
                        .givesNumber(CompositionFormulas::relativeDensity),
                mixed(formula("composition-wobbe", "Wobbe index from composition"))
                        .choice("basis", "with the water's heat or without", TestGasFormulas.GROSS, TestGasFormulas.NET)
                        .gives("J/m3", "MJ/m3", "MJ/m3", v -> heatingValue(v) / Math.sqrt(relativeDensity(v))));
    }

    private static FormulaBuilder mixed(FormulaBuilder draft) {
        FormulaBuilder more = draft;
        for (GasComponent component : GasComponent.values()) {
            more = more.optional(component.key, "mole fraction", "1", "%", 0, 100);
        }
        return more.source(SOURCE).validity(VALID).refuses(CompositionFormulas::whole);
    }

    private static List<String> whole(Values v) {
        double sum = sum(v, component -> 1);
        return Math.abs(sum - 1) <= SUM_WITHIN
                ? List.of()
                : List.of(String.format(
                        Locale.ROOT,
                        "the mole fractions must sum to 99.9 to 100.1 %%, got %.3f %%: a component is missing",
                        sum * 100));
    }

    private static double sum(Values v, ToDoubleFunction<GasComponent> figure) {
        double sum = 0;
        for (GasComponent component : GasComponent.values()) {
            sum += v.of(component.key, 0) * figure.applyAsDouble(component);
        }
        return sum;
    }

    private static double mean(Values v, ToDoubleFunction<GasComponent> figure) {
        return sum(v, figure) / sum(v, component -> 1);
    }

    private static double compression(Values v) {
        double root = mean(v, component -> component.summationFactor);
        return 1 - root * root;
    }

    /** J/m3. */
    private static double heatingValue(Values v) {
        double water = v.choice("basis").equals(TestGasFormulas.NET) ? EVAPORATION / 2 : 0;
        double joulesPerMole = 1000 * mean(v, component -> component.gross - water * component.hydrogenAtoms);
        return joulesPerMole * PASCAL / (GAS_CONSTANT * KELVIN * compression(v));
    }

    private static double relativeDensity(Values v) {
        return mean(v, component -> component.molarMass) / MOLAR_MASS_OF_AIR * COMPRESSION_OF_AIR / compression(v);
    }
}
