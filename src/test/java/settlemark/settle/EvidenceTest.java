package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

final class EvidenceTest {
    private static final SettleSettings GAS = SettleSettings.defaults(SettleKind.GAS);
    private static final SettleSettings AIR = SettleSettings.defaults(SettleKind.AIR);
    private static final double NOISE = 0.002;
    private static final double NOISE_RANGE = 2.5 * NOISE;

    private static Evidence fed(SettleSettings settings, Set<Part> leftOut, double until, DoubleUnaryOperator signal) {
        Evidence evidence = new Evidence(settings, leftOut);
        for (double t = 0; t <= until; t += 0.25) {
            evidence.add(t, signal.applyAsDouble(t), 0, NOISE, true);
        }
        return evidence;
    }

    private static DoubleUnaryOperator swing(double size) {
        return t -> 3.5 + size * Math.sin(2 * Math.PI * t / 4);
    }

    @Test
    void swingsBeforeAQuietMomentSpeakAgainstIt() {
        DoubleUnaryOperator swing = swing(0.1);
        Evidence evidence = fed(GAS, Set.of(), 105, t -> t < 60 ? swing.applyAsDouble(t) : 3.5);
        assertThat(evidence.swung()).isCloseTo(0.1 - NOISE_RANGE, within(1e-3));
        assertThat(evidence.swungTooFar()).isTrue();
        assertThat(evidence.shortest().holds()).isTrue();
        assertThat(evidence.surest()).isNull();
        Evidence within = fed(GAS, Set.of(), 105, t -> t < 60 ? swing(0.052).applyAsDouble(t) : 3.5);
        assertThat(within.swungTooFar())
                .as("swings that noise may widen so far")
                .isFalse();
        assertThat(within.surest()).isNotNull();
        assertThat(fed(GAS, Set.of(Part.SWINGS_OBJECT), 105, t -> t < 60 ? swing.applyAsDouble(t) : 3.5)
                        .surest())
                .isNotNull();
    }

    @Test
    void whatWasBeforeAMovementIsForgotten() {
        Evidence gas = fed(GAS, Set.of(), 60, t -> 3.5);
        assertThat(gas.nearest()).isNotNull();
        assertThat(gas.tooShort(gas.shortest())).isFalse();
        gas.forgetBefore(50);
        assertThat(gas.nearest()).isNull();
        assertThat(gas.secondsToNextWindow(60)).isCloseTo(16 - 10, within(1.0));
        assertThat(gas.tooShort(gas.shortest())).isTrue();
        gas.clear();
        assertThat(gas.tooShort(gas.shortest())).isFalse();
        Evidence keeps = fed(GAS, Set.of(Part.FORGETTING, Part.CAUTION_AFTER_MOVEMENT), 60, t -> 3.5);
        keeps.forgetBefore(50);
        assertThat(keeps.nearest()).isNotNull();
        assertThat(keeps.secondsToNextWindow(60)).isGreaterThan(16);
        assertThat(keeps.tooShort(keeps.shortest())).isFalse();
    }

    @Test
    void aCurveAndASwingAreForgottenAsWell() {
        Evidence approach = fed(AIR, Set.of(), 150, t -> 120 - 40 * Math.exp(-t / 40));
        assertThat(approach.nearest()).isInstanceOf(ApproachProof.class);
        assertThat(approach.forecast()).isNotNull();
        approach.forgetBefore(140);
        assertThat(approach.nearest()).isNull();
        assertThat(approach.forecast()).isNull();
        Evidence hunting = fed(AIR, Set.of(), 390, t -> 120 + 0.6 * Math.sin(2 * Math.PI * t / 110));
        assertThat(hunting.surest()).isInstanceOf(HuntingProof.class);
        hunting.forgetBefore(380);
        assertThat(hunting.nearest()).isNull();
        assertThat(hunting.surest()).isNull();
        Evidence cleared = fed(AIR, Set.of(), 390, t -> 120 + 0.6 * Math.sin(2 * Math.PI * t / 110));
        cleared.clear();
        assertThat(cleared.surest()).isNull();
    }

    @Test
    void movementIsSureOnlyInAFullWindow() {
        DoubleUnaryOperator ramp = t -> 3.5 + 0.003 * t;
        assertThat(fed(GAS, Set.of(), 10, ramp).surelyMovesBeside(Ongoing.NOTHING))
                .isFalse();
        Evidence full = fed(GAS, Set.of(), 30, ramp);
        assertThat(full.surelyMovesBeside(Ongoing.NOTHING)).isTrue();
        assertThat(full.surelyMoves()).isTrue();
        assertThat(full.surelyMovesBeside(Ongoing.swing(0.0025)))
                .as("no faster than the swing, but for less than the limit")
                .isFalse();
        assertThat(fed(GAS, Set.of(), 10, swing(0.1)).swingsTooFarBeside(Ongoing.NOTHING))
                .isFalse();
        assertThat(fed(GAS, Set.of(), 30, swing(0.1)).swingsTooFarBeside(Ongoing.NOTHING))
                .isTrue();
        assertThat(fed(GAS, Set.of(), 30, swing(0.06)).swingsTooFarBeside(Ongoing.NOTHING))
                .as("less than 1.3 bands")
                .isFalse();
    }

    @Test
    void halfOfWhatAnApproachStillMovesIsNoSwing() {
        LineProof shortest = fed(GAS, Set.of(), 40, swing(0.08)).shortest();
        assertThat(shortest.swing()).isCloseTo(0.08 - NOISE_RANGE, within(1e-3));
        Ongoing left = Ongoing.approach(-0.05, 10, shortest.window().lastSeconds());
        double moved = 0.05 * (Math.exp(shortest.window().spanSeconds() / 10) - 1);
        assertThat(left.between(
                        shortest.window().firstSeconds(), shortest.window().lastSeconds()))
                .isCloseTo(-moved, within(1e-12));
        assertThat(shortest.swingBeside(Ongoing.NOTHING)).isEqualTo(shortest.swing());
        Ongoing little = Ongoing.approach(-0.005, 10, shortest.window().lastSeconds());
        assertThat(shortest.swingBeside(little)).isCloseTo(shortest.swing() - moved / 20, within(1e-12));
        assertThat(shortest.swingBeside(left)).isZero();
    }
}
