package settlemark.calc;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** All formulas, by name. */
public final class Formulas {
    private static final List<Formula> ALL = gather();

    private Formulas() {}

    /** In the order of the work: gas, orifice, altitude, air, supply, tightness, combustion, water, decision. */
    public static List<Formula> all() {
        return ALL;
    }

    public static Optional<Formula> find(String name) {
        return ALL.stream().filter(formula -> formula.name().equals(name)).findFirst();
    }

    private static List<Formula> gather() {
        List<Formula> all = new ArrayList<>();
        all.addAll(GasFormulas.all());
        all.addAll(OrificeFormulas.all());
        all.addAll(AltitudeFormulas.all());
        all.addAll(AirFormulas.all());
        all.addAll(PipeFormulas.all());
        all.addAll(TightnessFormulas.all());
        all.addAll(CombustionFormulas.all());
        all.addAll(WaterFormulas.all());
        all.addAll(DecisionFormulas.all());
        return List.copyOf(all);
    }
}
