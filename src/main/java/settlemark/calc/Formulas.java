package settlemark.calc;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** All formulas, by name. Those of a subject are made when one of it is first asked for: a job needs a few. */
public final class Formulas {
    private static final int SUBJECTS = 14;
    private static final List<List<Formula>> MADE = new ArrayList<>();

    private Formulas() {}

    /** In the order of the work: gas, orifice, altitude, air, supply, tightness, combustion, water, decision. */
    public static List<Formula> all() {
        List<Formula> all = new ArrayList<>();
        for (int subject = 0; subject < SUBJECTS; subject++) {
            all.addAll(of(subject));
        }
        return List.copyOf(all);
    }

    public static Optional<Formula> find(String name) {
        for (int subject = 0; subject < SUBJECTS; subject++) {
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
            MADE.add(List.copyOf(make(MADE.size())));
        }
        return MADE.get(subject);
    }

    private static List<Formula> make(int subject) {
        return switch (subject) {
            case 0 -> GasFormulas.all();
            case 1 -> InputFormulas.all();
            case 2 -> TestGasFormulas.all();
            case 3 -> CompositionFormulas.all();
            case 4 -> OrificeFormulas.all();
            case 5 -> AltitudeFormulas.all();
            case 6 -> AirFormulas.all();
            case 7 -> BlowerFormulas.all();
            case 8 -> PipeFormulas.all();
            case 9 -> TightnessFormulas.all();
            case 10 -> LetByFormulas.all();
            case 11 -> CombustionFormulas.all();
            case 12 -> WaterFormulas.all();
            case 13 -> DecisionFormulas.all();
            default -> throw new IllegalArgumentException("no subject " + subject);
        };
    }
}
