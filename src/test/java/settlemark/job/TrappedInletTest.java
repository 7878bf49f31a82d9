package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import settlemark.measure.Role;
import settlemark.settle.StageReading;

final class TrappedInletTest {
    private final Bench bench = new Bench();

    /** Settling of 60 s and a watch of 180 s, as the shipped act has them. */
    @Test
    void aPressureThatStaysIsInsideAndTheTimesAreThePlans() {
        trap(7.83);
        bench.pass(59);
        assertThat(bench.step("let-by").waitingFor()).isEqualTo("inlet comes to rest for 1 s more");
        bench.pass(1);
        assertThat(bench.step("let-by").waitingFor()).isEmpty();
        bench.pass(179);
        assertThat(bench.step("let-by").waitingFor()).isEqualTo("inlet is watched for 1 s more");
        bench.pass(1);
        assertThat(bench.step("let-by").progress()).isEqualTo(Progress.TAKEN);
        assertThat(bench.step("let-by").outcome()).contains(Outcome.INSIDE);
    }

    @Test
    void aPressureThatFallsWhileItIsWatchedIsOutside() {
        trap(7.83);
        bench.pass(61);
        bench.settled(Role.INLET, 5.93);
        bench.pass(180);
        assertThat(bench.step("let-by").outcome()).contains(Outcome.OUTSIDE);
        assertThat(bench.step("let-by").remarks()).anyMatch(w -> w.startsWith("The trapped pressure fell by 1.90"));
    }

    /** A valve that lets by freely leaves nothing to be watched: from nothing to nothing is no change. */
    @Test
    void aPressureThatWentBeforeTheWatchBeganIsCountedFromThePress() {
        trap(7.83);
        bench.pass(5);
        bench.moving(Role.INLET, 0.04);
        bench.pass(56);
        StepState step = bench.step("let-by");
        assertThat(step.progress()).isEqualTo(Progress.TAKEN);
        assertThat(step.outcome()).contains(Outcome.OUTSIDE);
        assertThat(step.verdicts().get(0).value()).isCloseTo(0.04 - 7.83, within(1e-9));
        assertThat(step.readings()).extracting(StageReading::purpose).containsExactly("start", "hold");
        assertThat(step.remarks()).contains(TrappedPressure.GONE);
    }

    @Test
    void nothingTrappedIsNotWatchedAndTheStepSaysWhyOnce() {
        trap(0.05);
        bench.act(new Act.Confirm("let-by"));
        StepState step = bench.step("let-by");
        assertThat(step.progress()).isEqualTo(Progress.WAITING);
        assertThat(step.remarks())
                .containsExactly(
                        "The inlet shows 0.02 inH\u2082O: no pressure is trapped. Open the manual valve until the inlet"
                                + " stands at rest, then shut it again.");
        bench.settled(Role.INLET, 7.83);
        bench.pass(1);
        bench.act(new Act.Confirm("let-by"));
        assertThat(bench.step("let-by").progress()).isEqualTo(Progress.ARMED);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "one-stage-natural-gas",
                "two-stage-natural-gas",
                "two-stage-propane",
                "modulating-natural-gas",
                "conversion-to-propane",
                "boiler-gas-side",
                "yearly-re-check"
            })
    void aPlanThatFiresTriesTheValveAfterItShutAndBeforeItCloses(String plan) {
        List<String> keys = Plans.get(plan).steps().stream().map(PlanStep::key).toList();
        assertThat(keys).containsSubsequence("shut", "let-by", "close");
        assertThat(keys.indexOf("let-by")).isEqualTo(keys.indexOf("shut") + 1);
        assertThat(keys.indexOf("close")).isEqualTo(keys.indexOf("let-by") + 1);
    }

    /** What closing up does not ask is asked, and dated, where the ports are tested. */
    @Test
    void eachPlanHasItsPortsAndItsCapTicked() {
        for (String key : Plans.keys()) {
            JobPlan plan = Plans.get(key);
            List<String> ticks = plan.steps().stream()
                    .filter(s -> s.key().equals("leak-test"))
                    .flatMap(s -> s.ticks().stream())
                    .toList();
            assertThat(ticks).as(key).contains("Inlet port closed and tight with the burner firing");
            if (plan.readsManifold()) {
                assertThat(ticks)
                        .as(key)
                        .contains("Manifold port closed and tight with the burner firing", "Regulator cap on");
            }
        }
    }

    private void trap(double inlet) {
        bench.untilLockUp();
        bench.settled(Role.INLET, inlet);
        bench.pass(1);
        bench.act(new Act.Confirm("let-by"));
    }
}
