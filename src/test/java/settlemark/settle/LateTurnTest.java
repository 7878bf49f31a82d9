package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

final class LateTurnTest {
    private static final SettleSettings AIR = SettleSettings.defaults(SettleKind.AIR);
    private static final double TAU_SECONDS = 60;

    private static double settledAt(double turnSeconds, long seed, Set<Part> leftOut) {
        double perSecond = 2 * AIR.driftLimit() / AIR.horizonSeconds();
        Random random = new Random(seed);
        Traces.Trace trace = Traces.made(
                1,
                500,
                0.1,
                t -> 120
                        - 50 * Math.exp(-t / TAU_SECONDS)
                        + Math.max(0, t - turnSeconds) * perSecond
                        + 0.1 * random.nextGaussian());
        List<SettleEvent> events = Traces.events(AIR, 0.1, leftOut, trace);
        return events.stream()
                .filter(SettleEvent::settled)
                .mapToDouble(SettleEvent::timeSeconds)
                .findFirst()
                .orElse(Double.POSITIVE_INFINITY);
    }

    /** Each approach turns into a ramp of two limits 12 s before the reading would be declared without it. */
    @Test
    void aRampThatBeganAMomentAgoPutsTheReadingOff() {
        int with = 0;
        int without = 0;
        for (long seed = 1; seed <= 40; seed++) {
            double declared = settledAt(Double.MAX_VALUE, seed, Set.of(Part.TURNS_PUT_OFF));
            double turn = declared - 12;
            with += turnsFalse(turn, settledAt(turn, seed, Set.of()));
            without += turnsFalse(turn, settledAt(turn, seed, Set.of(Part.TURNS_PUT_OFF)));
        }
        System.out.printf("late turns, seeds 1 to 40: declared %d, without the look for them %d%n", with, without);
        assertThat(without).as("seeds 1 to 40").isGreaterThan(15);
        assertThat(with).as("seeds 1 to 40").isLessThan(without * 6 / 10);
    }

    private static int turnsFalse(double turn, double settled) {
        return settled > turn && settled < 500 ? 1 : 0;
    }

    @Test
    void itPutsOffForAWhileOnly() {
        LateTurn turn = new LateTurn(AIR, false);
        Proof turns = new ApproachProofThatTurns().proof();
        assertThat(turns.turnsLately()).isTrue();
        assertThat(turn.putsOff(turns, 100)).isTrue();
        assertThat(turn.putsOff(turns, 144)).isTrue();
        assertThat(turn.putsOff(turns, 145)).isFalse();
        turn.clear();
        assertThat(turn.putsOff(turns, 146)).isTrue();
        assertThat(new LateTurn(AIR, true).putsOff(turns, 100)).isFalse();
    }

    /** A curve whose last bins rise. */
    private static final class ApproachProofThatTurns {
        Proof proof() {
            ApproachProof proof = new ApproachProof(
                    AIR, new StudentT(AIR.confidence(), AIR.mostBins()), new WindowFit.Room(AIR.mostBins()));
            BinRing ring = new BinRing(AIR.binSeconds(), AIR.mostBins());
            Random random = new Random(5);
            for (int t = 0; t < 600; t++) {
                double value = 120
                        - 50 * Math.exp(-t / TAU_SECONDS)
                        + 0.02 * random.nextGaussian()
                        + Math.max(0, t - 350) * 0.004;
                if (ring.add(t, value)) {
                    proof.attempt(ring, t, 0, 0.02);
                    if (proof.turnsLately()) {
                        return proof;
                    }
                }
            }
            return proof;
        }
    }
}
