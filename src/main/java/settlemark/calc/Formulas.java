package settlemark.calc;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** All formulas, by name. Those of a subject are made when one of it is first asked for: a job needs a few. */
public final class Formulas {
    private static final List<Supplier<List<Formula>>> SUBJECTS = List.of(
            GasFormulas::all,
            InputFormulas::all,
            TestGasFormulas::all,
            CompositionFormulas::all,
            OrificeFormulas::all,
            AltitudeFormulas::all,
            AirFormulas::all,
            BlowerFormulas::all,
            PipeFormulas::all,
            TightnessFormulas::all,
            LetByFormulas::all,
            CombustionFormulas::all,
            WaterFormulas::all,
            DecisionFormulas::all);
    private static final List<List<Formula>> MADE = new ArrayList<>();

    private Formulas() {}

    /** In the order of the work: gas, orifice, altitude, air, supply, tightness, combustion, water, decision. */
    public static List<Formula> all() {
        List<Formula> all = new ArrayList<>();
        for (int subject = 0; subject < SUBJECTS.size(); subject++) {
            all.addAll(of(subject));
        }
        return List.copyOf(all);
    }

    public static Optional<Formula> find(String name) {
        for (int subject = 0; subject < SUBJECTS.size(); subject++) {
            for (Formula formula : of(subject)) {
                if (formula.name().equals(name)) {
                    return Optional.of(formula);
                }
            }
        }
        return Optional.empty();
    }

    private static synchronized List<Formula> of(int subject) {
        while (MADE.size() <= subject) {
            MADE.add(List.copyOf(SUBJECTS.get(MADE.size()).get()));
        }
        return MADE.get(subject);
    }
}
