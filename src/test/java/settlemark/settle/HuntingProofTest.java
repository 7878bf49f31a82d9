package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import settlemark.settle.Traces.Trace;

/** Slow swings of a temperature: the middle is the reading, once one and a half periods have been seen. */
final class HuntingProofTest {
    private static final SettleSettings AIR = SettleSettings.defaults(SettleKind.AIR);
    private static final double MIDDLE = 120;
    private static final double NOISE = 0.05;

    private static Trace trace(double endSeconds, DoubleUnaryOperator signal, long seed) {
        return Traces.made(1, endSeconds, 0.1, Traces.noisy(signal, NOISE, seed));
    }

    private static DoubleUnaryOperator sine(double size, double periodSeconds) {
        return t -> MIDDLE + size * Math.sin(2 * Math.PI * t / periodSeconds);
    }

    private static HuntingProof proof(Trace trace) {
        return proof(trace, NOISE);
    }

    private static HuntingProof proof(Trace trace, double sigma) {
        BinRing ring = new BinRing(AIR.binSeconds(), AIR.mostBins());
        for (int i = 0; i < trace.seconds().length; i++) {
            ring.add(trace.seconds()[i], trace.values()[i]);
        }
        HuntingProof proof = new HuntingProof(
                AIR, new StudentT(AIR.confidence(), AIR.mostBins()), new WindowFit.Room(AIR.mostBins()));
        proof.look(ring, 0.1, sigma);
        return proof;
    }

    private static List<SettleEvent> settled(Trace trace) {
        return Traces.events(AIR, 0.1, trace).stream()
                .filter(SettleEvent::settled)
                .toList();
    }

    @ParameterizedTest
    @CsvSource({"0.4,70", "0.5,100", "0.7,150", "0.6,170"})
    void theMiddleOfASlowSwingIsTheReading(double size, double periodSeconds) {
        for (long seed = 1; seed <= 5; seed++) {
            HuntingProof proof = proof(trace(400, sine(size, periodSeconds), seed));
            assertThat(proof.holds()).as("seed %d", seed).isTrue();
            assertThat(Math.abs(proof.value() - MIDDLE)).as("seed %d", seed).isLessThan(proof.uncertainty());
            assertThat(proof.uncertainty()).isLessThan(0.6 * AIR.driftLimit());
            assertThat(proof.swing()).isCloseTo(size, within(0.15));
            assertThat(proof.spread()).isCloseTo(size, within(0.15));
            assertThat(proof.periodSeconds()).isCloseTo(periodSeconds, within(10.0));
            assertThat(proof.spanSeconds()).isBetween(1.4 * periodSeconds, 2.1 * periodSeconds);
            assertThat(proof.startSeconds()).isCloseTo(400 - proof.spanSeconds(), within(8.0));
            assertThat(proof.left().swingPerSecond())
                    .isCloseTo(1.3 * 2 * Math.PI * size / periodSeconds, within(0.012));
        }
    }

    /** A burner that comes and goes makes saws and squares, and the mean over whole periods asks for no sine. */
    @ParameterizedTest
    @ValueSource(doubles = {0.5, 0.65})
    void theShapeOfTheSwingDoesNotMatter(double rises) {
        double period = 120;
        DoubleUnaryOperator saw = t -> {
            double phase = t / period - Math.floor(t / period);
            double up = phase < rises ? phase / rises : (1 - phase) / (1 - rises);
            return MIDDLE + 0.6 * (2 * up - 1);
        };
        HuntingProof proof = proof(trace(380, saw, 3));
        assertThat(proof.holds()).isTrue();
        assertThat(proof.value()).isCloseTo(MIDDLE, within(0.05));
    }

    @Test
    void aMiddleThatDriftsIsFoundOutWithItsSpeed() {
        for (double limits : new double[] {1.1, 1.3, 1.5}) {
            double perSecond = limits * AIR.driftLimit() / AIR.horizonSeconds();
            DoubleUnaryOperator swing = sine(0.6, 100);
            HuntingProof proof = proof(trace(390, t -> swing.applyAsDouble(t) + perSecond * t, 4));
            assertThat(proof.possible()).as("%s limits", limits).isTrue();
            assertThat(proof.holds()).as("%s limits", limits).isFalse();
            assertThat(proof.expectedToMove()).isCloseTo(limits * AIR.driftLimit(), within(0.12));
            assertThat(proof.couldMove()).isGreaterThan(proof.expectedToMove());
            assertThat(proof.moved()).isCloseTo(perSecond * proof.spanSeconds(), within(0.12));
        }
    }

    @Test
    void noSwingIsNoHunting() {
        assertThat(proof(trace(400, t -> MIDDLE, 5)).possible()).as("rest").isFalse();
        assertThat(proof(trace(400, t -> MIDDLE + 0.01 * t, 5)).possible())
                .as("a ramp")
                .isFalse();
        assertThat(proof(trace(400, t -> MIDDLE - 40 * Math.exp(-t / 45), 5)).possible())
                .as("an approach")
                .isFalse();
        assertThat(proof(trace(400, sine(0.6, 30), 5)).possible())
                .as("faster than the shortest window")
                .isFalse();
    }

    @Test
    void oneAndAHalfPeriodsMustHaveBeenSeen() {
        DoubleUnaryOperator swing = sine(0.6, 120);
        DoubleUnaryOperator begins = t -> t < 60 ? MIDDLE : swing.applyAsDouble(t - 60);
        assertThat(proof(trace(60 + 170, begins, 6)).possible()).isFalse();
        assertThat(proof(trace(60 + 280, begins, 6)).possible()).isTrue();
    }

    @Test
    void swingsOfUnlikeSizeOrLengthAreNoHunting() {
        DoubleUnaryOperator grows = t -> MIDDLE + 0.9 * Math.exp((t - 400) / 60) * Math.sin(2 * Math.PI * t / 120);
        assertThat(proof(trace(400, grows, 7)).possible()).as("it grows").isFalse();
        DoubleUnaryOperator slows = t -> MIDDLE + 0.6 * Math.sin(2 * Math.PI * Math.pow(t / 400, 3) * 6);
        assertThat(proof(trace(400, slows, 7)).possible()).as("it hastens").isFalse();
    }

    @Test
    void whatLeavesTheSwingEndsIt() {
        DoubleUnaryOperator swing = sine(0.4, 100);
        assertThat(proof(trace(325, swing, 8)).possible()).isTrue();
        assertThat(proof(trace(325, t -> swing.applyAsDouble(t) + (t > 305 ? 0.06 * (t - 305) : 0), 8))
                        .possible())
                .as("larger than the swing")
                .isFalse();
        assertThat(proof(trace(399, t -> t < 300 ? swing.applyAsDouble(t) : MIDDLE + 0.1, 8))
                        .possible())
                .as("longer than the swing")
                .isFalse();
    }

    @Test
    void aSwingBeyondTheBandNeverHolds() {
        for (long seed = 1; seed <= 20; seed++) {
            assertThat(settled(trace(1200, sine(1.6, 60 + 7 * seed), seed)))
                    .as("seed %d", seed)
                    .isEmpty();
        }
    }

    @Test
    void aSlowSwingWithinTheBandSettlesSaysSoAndStands() {
        for (long seed = 1; seed <= 10; seed++) {
            List<SettleEvent> events = Traces.events(AIR, 0.1, trace(1500, sine(0.6, 60 + 12 * seed), seed));
            assertThat(events).as("seed %d", seed).hasSize(1);
            assertThat(events.get(0).timeSeconds()).isLessThan(460);
            assertThat(events.get(0).value())
                    .isCloseTo(MIDDLE, within(events.get(0).uncertainty()));
            assertThat(events.get(0).reason())
                    .matches("swings ±0\\.[456]\\d* within ±1, the middle could still move 0\\.\\d+, limit 0\\.5");
        }
    }

    /** Swings hide a ramp for as long as it moves no farther than they do; a declared reading is then left by the sum. */
    @Test
    void aSwingOnARampIsSeldomDeclaredAndNeverStands() {
        int declared = 0;
        int standing = 0;
        int count = 40;
        for (long seed = 1; seed <= count; seed++) {
            double period = 60 + 3 * seed;
            double perSecond = 2 * AIR.driftLimit() / AIR.horizonSeconds();
            DoubleUnaryOperator swing = sine(0.6, period);
            Trace trace = trace(1200, t -> swing.applyAsDouble(t) + perSecond * t, seed);
            List<SettleEvent> events = Traces.events(AIR, 0.1, trace);
            declared += events.isEmpty() ? 0 : 1;
            standing += events.isEmpty() || !events.get(events.size() - 1).settled() ? 0 : 1;
        }
        assertThat(declared).as("of %d, seeds 1 to %d", count, count).isLessThanOrEqualTo(1);
        assertThat(standing).isZero();
    }

    @Test
    void aReadingOfASwingIsTakenBackWhenTheMiddleMoves() {
        DoubleUnaryOperator swing = sine(0.6, 120);
        for (double step : new double[] {-3, 2.5, 8}) {
            List<SettleEvent> events =
                    Traces.events(AIR, 0.1, trace(1100, t -> swing.applyAsDouble(t) + (t > 700 ? step : 0), 9));
            assertThat(events.get(0).settled()).isTrue();
            assertThat(events.get(1).settled()).isFalse();
            assertThat(events.get(1).timeSeconds()).as("step of %s", step).isBetween(700.0, 730.0);
            assertThat(events.get(events.size() - 1).settled()).isTrue();
            assertThat(events.get(events.size() - 1).value()).isCloseTo(MIDDLE + step, within(0.25));
        }
    }

    @Test
    void theStackHuntsAsTheAirDoesAndGasHasNoSuchProof() {
        Trace slow = trace(1000, sine(0.6, 110), 10);
        List<SettleEvent> stack = Traces.events(SettleSettings.defaults(SettleKind.STACK), 0.4, slow.shifted(0, 0, 4));
        assertThat(stack).hasSize(1);
        assertThat(stack.get(0).reason()).startsWith("swings ±");
        List<SettleEvent> without = Traces.events(AIR, 0.1, Set.of(Part.SWINGS_AVERAGED), slow);
        assertThat(without.stream().filter(SettleEvent::settled)).isEmpty();
        Trace gas = Traces.made(2, 300, 0.001, Traces.noisy(t -> 3.5 + 0.03 * Math.sin(t / 8), 0.002, 10));
        List<SettleEvent> events = new ArrayList<>(Traces.events(SettleKind.GAS, 0.001, gas));
        assertThat(events).noneSatisfy(e -> assertThat(e.reason()).startsWith("swings ±"));
    }

    /** The same trace without noise, in a ring whose bins hold three samples. */
    private static Trace exact(double endSeconds, DoubleUnaryOperator signal) {
        return Traces.made(1, endSeconds, 0, signal);
    }

    /** Straight lines between turns that lie a minute apart, the last at the end. */
    private static DoubleUnaryOperator turning(double... turns) {
        return t -> {
            int before = Math.min(turns.length - 2, (int) (t / 60));
            double part = t / 60 - before;
            return MIDDLE + turns[before] + part * (turns[before + 1] - turns[before]);
        };
    }

    @Test
    void withoutNoiseTheMiddleIsExact() {
        HuntingProof proof = proof(exact(380, sine(0.6, 120)));
        assertThat(proof.value()).isCloseTo(MIDDLE, within(1e-3));
        assertThat(proof.expectedToMove()).isLessThan(0.01);
        assertThat(proof.residualVariance()).as("of rounding").isCloseTo(0.01 / 12, within(1e-12));
        assertThat(proof.turnsLately()).isFalse();
    }

    @Test
    void theNoiseIsThatOfTheBinsWhateverTheSwing() {
        double sum = 0;
        for (long seed = 1; seed <= 20; seed++) {
            HuntingProof proof = proof(Traces.made(1, 380, 0, Traces.noisy(sine(0.6, 120), 0.12, seed)), 0.12);
            assertThat(proof.possible()).as("seed %d", seed).isTrue();
            sum += proof.residualVariance();
        }
        assertThat(sum / 20).as("0.12 in bins of three").isCloseTo(0.12 * 0.12 / 3, within(6e-4));
    }

    /** From the figures that it says itself: of the means of a period, half a period apart, half of which is common. */
    @Test
    void boundAndUncertaintyFollowFromNoiseAndPeriod() {
        for (long seed = 1; seed <= 5; seed++) {
            HuntingProof proof = proof(Traces.made(1, 380, 0, Traces.noisy(sine(0.6, 120), 0.12, seed)), 0.12);
            double bins = proof.periodSeconds() / 3;
            double error = Math.sqrt(proof.residualVariance() * bins) / bins / (proof.periodSeconds() / 2);
            double quantile = new StudentT(0.95, 122).quantile((int) bins);
            assertThat(proof.couldMove() - proof.expectedToMove())
                    .isCloseTo(quantile * error * 180, within(0.12 * quantile * error * 180));
            double squared = 4 * proof.residualVariance() / bins + 0.01 / 4 + Math.pow(0.6 * proof.couldMove(), 2);
            assertThat(proof.uncertainty()).isCloseTo(Math.sqrt(squared), within(0.002));
        }
    }

    @Test
    void oneTurnThatIsUnlikeTheOthersIsEnoughToRefuse() {
        assertThat(proof(exact(359, turning(0.6, -0.6, 0.6, -0.6, 0.6, -0.6, 0.6)))
                        .possible())
                .isTrue();
        assertThat(proof(exact(359, turning(0.6, -0.6, 0.6, -0.6, 0.0, -0.6, 0.6)))
                        .possible())
                .as("the turn in between")
                .isFalse();
        assertThat(proof(exact(359, turning(0.6, -0.6, 0.0, -0.6, 0.6, -0.6, 0.6)))
                        .possible())
                .as("the turn before")
                .isFalse();
        assertThat(proof(exact(359, turning(-0.6, 0.6, 0.6, 0.6, 0.6, -0.6, 0.6)))
                        .possible())
                .as("one half period of four")
                .isFalse();
    }

    @Test
    void aSwingWhoseLastTurnHasNotPassedTheMiddleGoesOnFromTheOneBefore() {
        HuntingProof proof = proof(exact(322, turning(-0.6, 0.6, -0.6, 0.6, -0.6, 0.6, 0.05)));
        assertThat(proof.possible()).isTrue();
        assertThat(proof.value()).isCloseTo(MIDDLE, within(0.02));
    }
}
