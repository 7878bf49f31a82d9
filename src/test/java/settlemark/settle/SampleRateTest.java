package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class SampleRateTest {
    private final SampleRate rate = new SampleRate();

    @Test
    void isNotKnownBeforeTwoSamples() {
        assertThat(rate.known()).isFalse();
        assertThat(rate.periodSeconds()).isNaN();
        assertThat(rate.longestPause(5)).isEqualTo(5);
        assertThat(rate.samplesForChange()).isEqualTo(2);
    }

    @Test
    void followsSlowly() {
        rate.spaced(1);
        assertThat(rate.periodSeconds()).isEqualTo(1);
        rate.spaced(0.5);
        assertThat(rate.periodSeconds()).isCloseTo(1 / 1.05, within(1e-12));
        assertThat(rate.known()).isTrue();
    }

    @Test
    void aBurstCountsAsFiftyASecond() {
        rate.spaced(1e-9);
        assertThat(rate.periodSeconds()).isEqualTo(0.02);
    }

    @ParameterizedTest
    @CsvSource({"4,5,16", "1,5,5", "1.25,5,5", "2,5,8"})
    void fourPeriodsAreNoGap(double period, double gap, double longest) {
        rate.spaced(period);
        assertThat(rate.longestPause(gap)).isEqualTo(longest);
    }

    @ParameterizedTest
    @CsvSource({"10,2", "1,2", "0.5,2", "0.4,2", "0.33333333,3", "0.2,5", "0.1,5"})
    void aSecondsWorthOfSamplesIsAChange(double period, int needed) {
        rate.spaced(period);
        assertThat(rate.samplesForChange()).isEqualTo(needed);
    }

    @Test
    void threePausesAlikeAreASlowProbe() {
        assertThat(rate.slow(20)).isFalse();
        assertThat(rate.slow(23.9)).isFalse();
        assertThat(rate.slow(20)).isTrue();
        assertThat(rate.periodSeconds()).isEqualTo(20);
    }

    @Test
    void pausesOfOtherLengthsAreNone() {
        for (double pause : new double[] {20, 24.1, 19, 23, 27.7}) {
            assertThat(rate.slow(pause)).as("%s", pause).isFalse();
        }
        assertThat(rate.slow(27.7)).isFalse();
        assertThat(rate.slow(27.7)).isTrue();
    }

    @Test
    void aSampleInTimeBreaksTheRow() {
        assertThat(rate.slow(20)).isFalse();
        assertThat(rate.slow(20)).isFalse();
        rate.spaced(1);
        assertThat(rate.slow(20)).isFalse();
        assertThat(rate.slow(20)).isFalse();
        assertThat(rate.slow(20)).isTrue();
        assertThat(rate.slow(20)).as("counted anew").isFalse();
    }
}
