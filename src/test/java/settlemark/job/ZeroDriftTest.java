package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import settlemark.measure.Role;

/** The closing zero goes into the uncertainty of what was judged before it, in proportion to time. */
final class ZeroDriftTest {
    private final Bench bench = new Bench(Plans.get("supply-check"));

    private Verdict inlet(String step) {
        return bench.step(step).verdicts().get(0);
    }

    private void job(double closing) {
        bench.act(new Act.Confirm("plate"));
        bench.act(new Act.Confirm("probes"));
        bench.settled(Role.INLET, 0.03);
        bench.act(new Act.Confirm("zero"));
        bench.pass(21);
        bench.settled(Role.INLET, 4.60);
        bench.act(new Act.Confirm("lock-up"));
        bench.pass(25);
        bench.act(new Act.Skip("this-appliance", "not asked for"));
        bench.act(new Act.Skip("all-appliances", "not asked for"));
        bench.settled(Role.INLET, closing);
        bench.act(new Act.Confirm("close"));
        bench.pass(25);
    }

    @Test
    void aReadingCarriesItsPartOfTheDriftToEitherSide() {
        job(0.03);
        double without = inlet("lock-up").expandedUncertainty();
        ZeroDriftTest drifted = new ZeroDriftTest();
        drifted.job(0.21);
        StepState lockUp = drifted.bench.step("lock-up");
        StepState zero = drifted.bench.step("zero");
        StepState close = drifted.bench.step("close");
        double closed = close.readings().get(0).timeNanos();
        double part = (lockUp.doneNanos() - zero.doneNanos()) / (closed - zero.doneNanos());
        assertThat(part).isBetween(0.3, 0.7);
        // 0.18 inH2O of drift, its part to either side, rectangular: over the root of three (JCGM 100:2008, 4.3.7)
        double expected = Math.hypot(without, 2 * 0.18 * part / Math.sqrt(3));
        assertThat(drifted.inlet("lock-up").expandedUncertainty()).isCloseTo(expected, within(1e-9));
        assertThat(lockUp.readings().get(0).channel(Role.INLET).orElseThrow().expandedUncertainty())
                .as("the reading itself stays")
                .isCloseTo(without, within(1e-12));
        assertThat(lockUp.remarks())
                .containsExactly(
                        "With the zero's drift in its uncertainty inlet is close, inside; before it was inside.");
        assertThat(close.remarks()).anyMatch(r -> r.startsWith("The inlet zero drift was +0.18"));
    }

    @Test
    void aZeroThatStoodStillSaysNothing() {
        job(0.03);
        assertThat(bench.step("close").remarks()).isEmpty();
        assertThat(bench.step("lock-up").remarks()).isEmpty();
        assertThat(inlet("lock-up").outcome()).isEqualTo(Outcome.INSIDE);
    }
}
