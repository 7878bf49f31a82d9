package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class HeadingTest {
    private static final SettleSettings GAS = SettleSettings.defaults(SettleKind.GAS);
    private static final int TRACES = 40;
    /** For so long after each turn it is asked at every sample; later everything is easy. */
    private static final double ASKED_SECONDS = 15;

    private final Heading heading = new Heading(GAS, 0.01);

    private void feed(Traces.Trace trace, double untilSeconds) {
        for (int i = 0; i < trace.seconds().length && trace.seconds()[i] <= untilSeconds; i++) {
            heading.accept(trace.seconds()[i], trace.values()[i]);
        }
    }

    /** Odd seeds; it was tuned on even ones. */
    @ParameterizedTest
    @CsvSource({"screw", "step", "exp", "stage change"})
    void itsBandCoversWherePressuresGo(String family) {
        int asked = 0;
        int known = 0;
        int covered = 0;
        for (int i = 0; i < TRACES; i++) {
            SimulatedTrace trace = TraceGenerator.family(SettleKind.GAS, family, 2L * i + 1);
            Heading of = new Heading(GAS, trace.resolution());
            double changedAt = Double.NEGATIVE_INFINITY;
            double target = trace.truth().referenceAt(0);
            for (int j = 0; j < trace.samples().seconds().length; j++) {
                double t = trace.samples().seconds()[j];
                of.accept(t, trace.samples().values()[j]);
                double now = trace.truth().referenceAt(t);
                changedAt = now == target ? changedAt : t;
                target = now;
                if (t - changedAt > ASKED_SECONDS) {
                    continue;
                }
                asked++;
                Heading.Estimate estimate = of.estimate().orElse(null);
                known += estimate == null ? 0 : 1;
                covered += estimate != null && Math.abs(estimate.value() - target) <= estimate.uncertainty() ? 1 : 0;
            }
        }
        System.out.printf(
                "heading, %s, odd seeds 1 to %d: asked %d, known %d, covered %d%n",
                family, 2 * TRACES - 1, asked, known, covered);
        assertThat(known).isGreaterThan(asked / 2);
        assertThat((double) covered / known).isGreaterThanOrEqualTo(0.9);
    }

    @Test
    void fiveSamplesWithinSixSecondsAreNeeded() {
        for (int i = 0; i < 4; i++) {
            heading.accept(i, 3.5);
            assertThat(heading.estimate()).as("after %d", i + 1).isEmpty();
        }
        heading.accept(4, 3.5);
        assertThat(heading.estimate()).isPresent();
        Heading rare = new Heading(GAS, 0.01);
        for (int i = 0; i < 20; i++) {
            rare.accept(2.5 * i, 3.5);
        }
        assertThat(rare.estimate()).isEmpty();
    }

    @Test
    void aPauseOrAMissingValueForgetsAll() {
        for (int i = 0; i < 9; i++) {
            heading.accept(i, 3.5);
        }
        assertThat(heading.estimate()).isPresent();
        heading.accept(9, Double.NaN);
        assertThat(heading.estimate()).isEmpty();
        for (int i = 10; i < 19; i++) {
            heading.accept(i, 3.5);
        }
        heading.accept(18, 99);
        assertThat(heading.estimate()).as("not later: left out").isPresent();
        heading.accept(24.5, 3.5);
        assertThat(heading.estimate()).isEmpty();
    }

    @Test
    void nothingIsKnownWhileTheHandTurns() {
        feed(Traces.made(5, 20, 0.01, t -> t < 10 ? 3.5 : 3.5 + 0.1 * (t - 10)), 13);
        assertThat(heading.estimate()).isEmpty();
    }

    @Test
    void aLevelIsWhereItIsHeading() {
        feed(Traces.made(5, 20, 0.01, t -> 3.5), 20);
        Heading.Estimate estimate = heading.estimate().orElseThrow();
        assertThat(estimate.value()).isCloseTo(3.5, within(1e-9));
        assertThat(estimate.uncertainty()).isBetween(0.005, 0.02);
    }

    /** Half a second after a turn a lag of one second still owes 60 %. */
    @Test
    void whatIsOwedIsCountedIn() {
        Traces.Trace turn = Traces.made(10, 30, 0.001, t -> t < 10 ? 3.5 : 3.8 - 0.3 * Math.exp(-(t - 10)));
        feed(turn, 12.5);
        Heading.Estimate estimate = heading.estimate().orElseThrow();
        assertThat(estimate.value()).isCloseTo(3.8, within(estimate.uncertainty()));
        assertThat(Math.abs(3.8 - estimate.value())).isLessThan(0.3 * Math.exp(-2.5) / 2 + 0.01);
    }

    @Test
    void aSpikeIsNoNewHeading() {
        feed(Traces.made(5, 20, 0.01, t -> t > 19.9 ? 4.5 : 3.5), 20);
        assertThat(heading.estimate()).isEmpty();
    }

    @Test
    void aGapAndWhatIsNoNumberForgetWhatWas() {
        feed(Traces.made(5, 20, 0.01, t -> 3.5), 20);
        heading.accept(20.2, Double.NaN);
        assertThat(heading.estimate()).isEmpty();
        feed(Traces.made(5, 20, 0.01, t -> 3.5).shifted(30, 0, 1), 60);
        assertThat(heading.estimate()).isPresent();
        heading.accept(70, 3.5);
        assertThat(heading.estimate()).isEmpty();
    }

    @Test
    void timesThatDoNotIncreaseAreLeftOut() {
        feed(Traces.made(5, 20, 0.01, t -> 3.5), 20);
        Heading.Estimate before = heading.estimate().orElseThrow();
        heading.accept(20, 9);
        heading.accept(19, 9);
        assertThat(heading.estimate()).contains(before);
    }

    @Test
    void anUnknownStepCountsAsNone() {
        Heading unknown = new Heading(GAS, Double.NaN);
        for (int i = 0; i < 50; i++) {
            unknown.accept(i * 0.2, 3.5);
        }
        assertThat(unknown.estimate().orElseThrow().uncertainty()).isLessThan(1e-9);
    }
}
