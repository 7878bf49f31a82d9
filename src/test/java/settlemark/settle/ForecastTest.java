package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

final class ForecastTest {
    private static final List<String> FAMILIES =
            List.of("exp", "exp2", "spikes", "gaps", "rate change", "noise burst", "stage change", "screw");
    private static final int TRACES = 12;
    private static final double ASK_EVERY_SECONDS = 5;

    /** What was said on the way, and whether it came true. */
    private static final class Said {
        int asked;
        int known;
        int covered;
        int timed;
        int inTime;

        void ask(SettleKind kind, String family, long seed) {
            SimulatedTrace trace = TraceGenerator.family(kind, family, seed);
            List<SettleEvent> events = new ArrayList<>();
            SettleDetector detector = new SettleDetector(SettleSettings.defaults(kind), Double.NaN, events::add);
            List<double[]> said = new ArrayList<>();
            double next = 0;
            for (int i = 0; i < trace.samples().seconds().length; i++) {
                double t = trace.samples().seconds()[i];
                detector.accept(t, trace.samples().values()[i]);
                if (t >= next && trace.truth().remainingAt(t) > 1) {
                    next = t + ASK_EVERY_SECONDS;
                    asked++;
                    detector.forecast()
                            .ifPresent(
                                    f -> said.add(new double[] {t, f.value(), f.uncertainty(), f.secondsToSettled()}));
                }
            }
            said.forEach(s -> judge(s, trace.truth(), events));
        }

        private void judge(double[] said, Truth truth, List<SettleEvent> events) {
            double end = truth.referenceAt(said[0]);
            known++;
            covered += Math.abs(said[1] - end) <= said[2] ? 1 : 0;
            double took = events.stream()
                            .filter(e -> e.settled() && e.timeSeconds() > said[0])
                            .mapToDouble(SettleEvent::timeSeconds)
                            .min()
                            .orElse(Double.NaN)
                    - said[0];
            // Where the next turn came before, nobody knows how long it would have taken.
            if (took > 0 && truth.referenceAt(said[0] + took) == end) {
                timed++;
                inTime += took >= said[3] / 2 && took <= 2 * said[3] ? 1 : 0;
            }
        }
    }

    /** Odd seeds; it was tuned on even ones. */
    @ParameterizedTest
    @EnumSource(
            value = SettleKind.class,
            names = {"AIR", "STACK"})
    void itsBandCoversTheFinalValues(SettleKind kind) {
        Said all = new Said();
        for (String family : FAMILIES) {
            Said said = new Said();
            for (int i = 0; i < TRACES; i++) {
                said.ask(kind, family, 2L * i + 1);
                all.ask(kind, family, 2L * i + 1);
            }
            System.out.printf(
                    "forecast, %s %s, odd seeds 1 to %d: asked %d, known %d, covered %d; time within 2x %d of %d%n",
                    kind, family, 2 * TRACES - 1, said.asked, said.known, said.covered, said.inTime, said.timed);
        }
        assertThat(all.known).isGreaterThan(500);
        assertThat((double) all.covered / all.known).isGreaterThanOrEqualTo(0.9);
        assertThat((double) all.inTime / all.timed).isGreaterThanOrEqualTo(0.75);
    }

    /** A slower second mode is the hard one: the first curve through it ends too early. */
    @ParameterizedTest
    @EnumSource(
            value = SettleKind.class,
            names = {"AIR", "STACK"})
    void itsBandCoversTheFinalValueOfASlowerSecondMode(SettleKind kind) {
        Said said = new Said();
        for (int i = 0; i < 4 * TRACES; i++) {
            said.ask(kind, "exp2", 2L * i + 301);
        }
        System.out.printf(
                "forecast, %s exp2, odd seeds 301 to %d: asked %d, known %d, covered %d%n",
                kind, 299 + 8 * TRACES, said.asked, said.known, said.covered);
        assertThat(said.known).isGreaterThan(400);
        assertThat((double) said.covered / said.known).isGreaterThanOrEqualTo(0.9);
    }

    @Test
    void gasHasNone() {
        Said said = new Said();
        for (int i = 0; i < TRACES; i++) {
            said.ask(SettleKind.GAS, "exp", 2L * i + 1);
        }
        assertThat(said.asked).isPositive();
        assertThat(said.known).isZero();
    }

    @Test
    void thereIsNoneBeforeTheDataCarryItAndNoneOnceSettled() {
        SettleDetector air = new SettleDetector(SettleSettings.defaults(SettleKind.AIR), 0.1);
        int known = 0;
        for (int t = 0; t < 700; t++) {
            air.accept(t, 120 - 50 * Math.exp(-t / 60.0));
            known += air.forecast().isPresent() ? 1 : 0;
            if (t < 48 || air.state().settled()) {
                assertThat(air.forecast()).isEmpty();
            }
        }
        assertThat(known).isGreaterThan(50);
        assertThat(air.state().settled()).isTrue();
    }

    @Test
    void whatIsNoForecastIsRefused() {
        assertThatThrownBy(() -> new Forecast(Double.NaN, 1, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Forecast(1, -1, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Forecast(1, 1, Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    }
}
