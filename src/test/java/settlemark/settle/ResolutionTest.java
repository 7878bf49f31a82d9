package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

final class ResolutionTest {
    private final Resolution gas = new Resolution(Double.NaN, SettleSettings.defaults(SettleKind.GAS));

    @Test
    void isTheGivenOne() {
        Resolution given = new Resolution(0.05, SettleSettings.defaults(SettleKind.GAS));
        given.see(1);
        given.see(1.01);
        assertThat(given.step()).isEqualTo(0.05);
    }

    @Test
    void isTheUsualOneUntilSomethingChanges() {
        gas.see(3.5);
        gas.see(3.5);
        assertThat(gas.step()).isEqualTo(0.01);
    }

    @Test
    void isTheSmallestDifference() {
        for (double value : new double[] {3.5, 3.502, 3.499, 3.5}) {
            gas.see(value);
        }
        assertThat(gas.step()).isCloseTo(0.001, within(1e-12));
    }

    @Test
    void aFirstLargeChangeIsNotTakenForTheStep() {
        for (double value : new double[] {3.2, 3.2, 3.5, 3.5, 3.2, 3.2}) {
            gas.see(value);
        }
        assertThat(gas.step()).isEqualTo(0.01);
    }

    @Test
    void aCoarseStepIsBelievedOnceItCameUpSeveralTimes() {
        for (double value : new double[] {3.5, 3.6, 3.5, 3.6, 3.6, 3.7}) {
            gas.see(value);
        }
        assertThat(gas.step()).isCloseTo(0.1, within(1e-12));
    }

    /** Sums of decimal fractions differ in their last digits; that is no step. */
    @Test
    void lastDigitsAreNoStep() {
        for (int i = 0; i < 5; i++) {
            gas.see(3.5 + 2 * Math.ulp(3.5) * (i % 2));
        }
        assertThat(gas.step()).isEqualTo(0.01);
        for (int i = 0; i < 8; i++) {
            gas.see(3.5 + 1e-13 * (i % 2));
        }
        assertThat(gas.step()).as("more than the last digits").isCloseTo(1e-13, within(1e-15));
    }

    @Test
    void valuesThatAreNotRoundedHaveHardlyAny() {
        long seed = 3;
        Random random = new Random(seed);
        for (int i = 0; i < 500; i++) {
            gas.see(3.5 + 0.01 * random.nextGaussian());
        }
        assertThat(gas.step()).as("seed %d", seed).isLessThan(2e-4);
    }
}
