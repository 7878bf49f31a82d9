package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import settlemark.settle.TraceGenerator.RampFrom;

/** A part that changes no decision anywhere would be none; what each buys is counted in {@link AblationTest}. */
final class PartsTest {
    private static final int TRACES = 25;

    private static boolean changes(SettleKind kind, Part part, SimulatedTrace trace) {
        SettleSettings settings = SettleSettings.defaults(kind);
        List<SettleEvent> whole = Traces.events(settings, Double.NaN, Set.of(), trace.samples());
        return !Traces.events(settings, Double.NaN, EnumSet.of(part), trace.samples())
                .equals(whole);
    }

    @ParameterizedTest
    @EnumSource(Part.class)
    void eachPartChangesSomeDecision(Part part) {
        int changed = 0;
        for (int i = 0; i < TRACES && changed == 0; i++) {
            long seed = 2L * i + 1;
            for (SettleKind kind : List.of(SettleKind.GAS, SettleKind.AIR)) {
                changed += changes(kind, part, TraceGenerator.ramp(kind, 1.25, RampFrom.REST, seed)) ? 1 : 0;
                changed += changes(kind, part, TraceGenerator.family(kind, "beat out", seed)) ? 1 : 0;
                changed += changes(kind, part, TraceGenerator.family(kind, "stage change", seed)) ? 1 : 0;
                changed += changes(kind, part, TraceGenerator.family(kind, "slow hunt in", seed)) ? 1 : 0;
            }
        }
        assertThat(changed).as("traces changed without %s", part).isPositive();
    }
}
