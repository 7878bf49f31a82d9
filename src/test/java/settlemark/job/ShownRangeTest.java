package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.measure.Unit;

/** 249.08891 Pa a conventional inch of water (NIST SP 811, B.8); 5/9 K a degree Fahrenheit of difference. */
final class ShownRangeTest {
    @ParameterizedTest
    @CsvSource({
        // what somebody wrote down stays
        "4.5, 10.5, 4.5, 10.5",
        "3.15, 3.85, 3.15, 3.85",
        "54880, 57120, 54880, 57120",
        "-0.03, 0.03, -0.03, 0.03",
        "10.125, 12, 10.125, 12",
        // 4.5 and 10.5 inches, 3.15 and 3.85, 0.05 to either side, 30 and 60 degrees
        "1120.900095, 2615.433555, 1121, 2615",
        "784.6300665, 958.9923035, 785, 959",
        "-12.4544455, 12.4544455, -12.5, 12.5",
        "16.66666666666667, 33.33333333333333, 16.7, 33.3",
        // 56,000 Btu/h and 2 % to either side, kilowatts
        "16.0836, 16.740080, 16.08, 16.74"
    })
    void whatAConversionMadeLongIsRoundedAndNothingElse(double low, double high, double shownLow, double shownHigh) {
        assertThat(ShownRange.of(low, high)).isEqualTo(new ShownRange(shownLow, shownHigh));
    }

    @Test
    void anOpenEndStaysOpen() {
        assertThat(ShownRange.of(Double.NEGATIVE_INFINITY, 124.544455))
                .isEqualTo(new ShownRange(Double.NEGATIVE_INFINITY, 125));
        assertThat(ShownRange.of(-124.544455, Double.POSITIVE_INFINITY))
                .isEqualTo(new ShownRange(-125, Double.POSITIVE_INFINITY));
    }

    @Test
    void theLimitThatIsShownNeverPutsTheValueOnItsOtherSide() {
        long seed = 20261126;
        System.out.println("shown limits seed " + seed);
        Random random = new Random(seed);
        int asItIs = 0;
        for (int i = 0; i < 20_000; i++) {
            Limit limit = Limit.around(
                            0.5 + 10 * random.nextDouble(), 0.05 + random.nextDouble(), Unit.INCH_OF_WATER, "plate")
                    .to(Unit.PASCAL);
            double end = random.nextBoolean() ? limit.lower() : limit.upper();
            Verdict verdict = Verdict.judge("manifold", end + 2 * random.nextGaussian(), 5, limit);
            Limit shown = verdict.shownLimit();
            assertThat(shown.contains(verdict.value())).isEqualTo(limit.contains(verdict.value()));
            asItIs += shown.equals(limit) ? 1 : 0;
        }
        assertThat(asItIs).isBetween(10, 5_000);
    }
}
