package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import settlemark.measure.Dimension;

/** The examples are worked by hand from the rules' words; where the words leave something open, the class says what is taken. */
final class RuleWatchTest {
    private static final double QUARTER = 900;

    private static RuleWatch fahrenheit(PublishedRule rule) {
        return new RuleWatch(rule, 1, 15);
    }

    /** Readings by hand, at equal times. */
    private static RuleWatch spaced(RuleWatch watch, double spacing, double... readings) {
        for (int i = 0; i < readings.length; i++) {
            watch.accept(i * spacing, readings[i]);
        }
        return watch;
    }

    private static void each(RuleWatch watch, double from, double to, double step, DoubleUnaryOperator value) {
        for (int i = 0; from + i * step <= to + 1e-9; i++) {
            watch.accept(from + i * step, value.applyAsDouble(from + i * step));
        }
    }

    /** First time at which it held, NaN where it never did. */
    private static double heldAt(RuleWatch watch, double from, double to, double step, DoubleUnaryOperator value) {
        for (int i = 0; from + i * step <= to; i++) {
            watch.accept(from + i * step, value.applyAsDouble(from + i * step));
            if (watch.holds()) {
                return from + i * step;
            }
        }
        return Double.NaN;
    }

    // 10 CFR 430 Subpart B Appendix O, 3.1.1: not more than +-3 degF (or 5) in three successive readings 15 min apart
    @ParameterizedTest
    @CsvSource({
        "THREE_READINGS_3_DEGF,300,303,297,true", // mean 300: 3 off is not more than 3
        "THREE_READINGS_3_DEGF,300,303.1,297,false", // mean 300.033: 3.067 off
        "THREE_READINGS_3_DEGF,400,402,404,true", // mean 402: 2 off
        "THREE_READINGS_3_DEGF,400,403,407,false", // mean 403.33: 3.67 off
        "THREE_READINGS_5_DEGF,400,403,407,true",
        "THREE_READINGS_5_DEGF,400,405,410,true", // mean 405: 5 off
        "THREE_READINGS_5_DEGF,400,405,410.2,false",
    })
    void threeReadingsAreHeldToTheirMean(PublishedRule rule, double first, double second, double third, boolean holds) {
        RuleWatch watch = spaced(fahrenheit(rule), QUARTER, first, second, third);
        assertThat(watch.holds()).isEqualTo(holds);
        RuleState state = watch.state();
        assertThat(state.holds()).isEqualTo(holds);
        assertThat(state.fromSeconds()).isZero();
        if (holds) {
            assertThat(state.value()).isCloseTo((first + second + third) / 3, within(1e-12));
            assertThat(state.uncertainty()).isCloseTo(2 * rule.tolerance() / Math.sqrt(3), within(1e-12));
            assertThat(state.reason()).startsWith("steady by " + rule.key() + ": the last 3 lie within ±");
        } else {
            assertThat(state.value()).isNaN();
            assertThat(state.reason()).startsWith("not yet by " + rule.key()).contains("more in 900 s");
        }
    }

    @Test
    void aRuleStandsForNoValueBeforeItHoldsNorForOneThatIsTooFar() {
        RuleWatch watch = spaced(fahrenheit(PublishedRule.THREE_READINGS_3_DEGF), QUARTER, 300, 300);
        assertThat(watch.state().standsFor(300)).isFalse();
        watch.accept(2 * QUARTER, 300);
        assertThat(watch.state().standsFor(303)).isTrue();
        assertThat(watch.state().standsFor(303.1)).isFalse();
    }

    @Test
    void anInterruptionThatComesLateDoesNotTurnTimeBack() {
        RuleWatch watch = spaced(fahrenheit(PublishedRule.THREE_READINGS_3_DEGF), QUARTER, 300, 300, 300);
        watch.interrupted(QUARTER, "the link was lost");
        assertThat(watch.holds()).isFalse();
        assertThat(watch.state().timeSeconds()).isEqualTo(2 * QUARTER);
    }

    @Test
    void itIsTheLastThreeThatCount() {
        RuleWatch watch = spaced(fahrenheit(PublishedRule.THREE_READINGS_3_DEGF), QUARTER, 200, 350, 398, 400);
        assertThat(watch.holds()).isFalse();
        watch.accept(4 * QUARTER, 401);
        assertThat(watch.holds()).isTrue();
        assertThat(watch.state().fromSeconds()).isEqualTo(2 * QUARTER);
        assertThat(watch.state().sinceSeconds()).isEqualTo(4 * QUARTER);
        assertThat(watch.state().reason())
                .isEqualTo("steady by three-readings-3-degf: the last 3 lie within ±1.67 of their mean, limit ±3");
        watch.accept(5 * QUARTER, 412);
        assertThat(watch.holds()).isFalse();
        assertThat(watch.state().sinceSeconds()).isNaN();
    }

    @Test
    void aStreamIsReadEachQuarterAndDecidedAfterHalfAnHour() {
        RuleWatch watch = fahrenheit(PublishedRule.THREE_READINGS_3_DEGF);
        double at = heldAt(watch, 100, 3000, 1, t -> 400);
        assertThat(at).isEqualTo(1900);
        assertThat(watch.state().fromSeconds()).isEqualTo(100);
        assertThat(watch.state().secondsToGo()).isEqualTo(900);
    }

    @Test
    void whatLiesBetweenTheReadingsIsNotLookedAt() {
        RuleWatch watch = fahrenheit(PublishedRule.THREE_READINGS_3_DEGF);
        assertThat(heldAt(watch, 0, 2000, 1, t -> t % QUARTER == 0 ? 400 : 450)).isEqualTo(1800);
    }

    @Test
    void saysHowManyReadingsThereAre() {
        RuleWatch watch = fahrenheit(PublishedRule.THREE_READINGS_5_DEGF);
        assertThat(watch.state().reason()).isEqualTo("not yet by three-readings-5-degf: no reading yet");
        assertThat(watch.state().secondsToGo()).isNaN();
        each(watch, 0, 1000, 1, t -> 400);
        assertThat(watch.state().reason()).isEqualTo("not yet by three-readings-5-degf: reading 2 of 3, more in 800 s");
        assertThat(watch.state().secondsToGo()).isEqualTo(800);
        assertThat(watch.state().timeSeconds()).isEqualTo(1000);
    }

    @Test
    void aGapStartsAgain() {
        RuleWatch watch = fahrenheit(PublishedRule.THREE_READINGS_3_DEGF);
        each(watch, 0, 1700, 1, t -> 400);
        each(watch, 1716, 1800, 1, t -> 400);
        assertThat(watch.holds()).isFalse();
        assertThat(watch.state().reason())
                .isEqualTo(
                        "not yet by three-readings-3-degf: reading 1 of 3, more in 816 s (counted afresh: gap of 16 s)");
        assertThat(heldAt(watch, 1801, 5000, 1, t -> 400)).isEqualTo(1716 + 1800);
    }

    @Test
    void aPauseThatIsNoGapDoesNot() {
        RuleWatch watch = fahrenheit(PublishedRule.THREE_READINGS_3_DEGF);
        each(watch, 0, 1700, 1, t -> 400);
        assertThat(heldAt(watch, 1715, 5000, 1, t -> 400)).isEqualTo(1800);
    }

    @Test
    void aMissingValueStartsAgain() {
        RuleWatch watch = fahrenheit(PublishedRule.THREE_READINGS_3_DEGF);
        each(watch, 0, 1799, 1, t -> 400);
        watch.accept(1800, Double.NaN);
        assertThat(watch.state().reason()).isEqualTo("not yet by three-readings-3-degf: no reading, no value");
        assertThat(heldAt(watch, 1801, 5000, 1, t -> 400)).isEqualTo(1801 + 1800);
    }

    @Test
    void aLostLinkStartsAgainEvenWhileItHolds() {
        RuleWatch watch = fahrenheit(PublishedRule.THREE_READINGS_3_DEGF);
        each(watch, 0, 1800, 1, t -> 400);
        assertThat(watch.holds()).isTrue();
        watch.interrupted(1800.5, "link lost");
        assertThat(watch.holds()).isFalse();
        assertThat(watch.state().sinceSeconds()).isNaN();
        assertThat(watch.state().reason()).contains("link lost");
        watch.interrupted(10, "an older one");
        watch.accept(1800.2, 400);
        assertThat(watch.state().timeSeconds()).as("not later than the loss").isEqualTo(1800.5);
    }

    @Test
    void aReadingByHandThatComesTooLateIsMissing() {
        RuleWatch watch = fahrenheit(PublishedRule.THREE_READINGS_3_DEGF);
        watch.accept(0, 400);
        watch.accept(900 + 45, 400); // a twentieth of 15 min late is allowed
        watch.accept(1800 - 45, 400); // and so much early; it is decided once its moment has passed
        assertThat(watch.holds()).isFalse();
        watch.accept(2700, 400);
        assertThat(watch.state().fromSeconds()).isEqualTo(945);
        assertThat(watch.holds()).isTrue();
        watch.accept(3600 + 46, 400);
        assertThat(watch.holds()).isFalse();
        assertThat(watch.state().reason()).contains("counted afresh: a reading was missing");
    }

    @Test
    void anEarlyReadingStandsForItsMomentOnceThatHasPassed() {
        RuleWatch watch = fahrenheit(PublishedRule.THREE_READINGS_3_DEGF);
        watch.accept(0, 400);
        watch.accept(890, 400);
        assertThat(watch.state().reason()).contains("reading 1 of 3");
        watch.accept(1795, 400);
        assertThat(watch.state().reason()).contains("reading 2 of 3");
        watch.accept(2690, 407);
        assertThat(watch.holds()).isTrue();
        assertThat(watch.state().fromSeconds()).isZero();
    }

    @Test
    void theSampleNearestToTheMomentIsItsReading() {
        RuleWatch watch = new RuleWatch(PublishedRule.THREE_READINGS_3_DEGF, 1, 1000);
        watch.accept(0, 400);
        watch.accept(895, 500);
        watch.accept(904, 401); // 4 s late beats 5 s early
        watch.accept(1799, 402);
        watch.accept(1803, 600); // 1 s early beats 3 s late
        assertThat(watch.holds()).isTrue();
        assertThat(watch.state().value()).isCloseTo(401, within(1e-12));
    }

    // 10 CFR 431 Subpart G Appendix A, 5.1: every one-minute reading within +-0.50 degF (or 1.00)
    @Test
    void everyMinuteIsHeldToTheFirst() {
        RuleWatch watch = fahrenheit(PublishedRule.EVERY_MINUTE_HALF_DEGF);
        assertThat(heldAt(watch, 0, 2000, 60, t -> t == 600 ? 140.5 : 140)).isEqualTo(1800);
        assertThat(watch.state().reason())
                .isEqualTo("steady by every-minute-half-degf: the last 31 lie within ±0.5 of their first, limit ±0.5");
        RuleWatch more = fahrenheit(PublishedRule.EVERY_MINUTE_HALF_DEGF);
        // The first half hour without it in it ends at 660 + 1800: the window has then moved past the odd reading.
        assertThat(heldAt(more, 0, 5000, 60, t -> t == 600 ? 140.51 : 140)).isEqualTo(2460);
        RuleWatch wide = fahrenheit(PublishedRule.EVERY_MINUTE_1_DEGF);
        assertThat(heldAt(wide, 0, 5000, 60, t -> t == 600 ? 140.51 : 140)).isEqualTo(1800);
    }

    @Test
    void everyMinuteDrift() {
        // 1.2 degF an hour: 0.6 in half an hour, beyond 0.5 and within 1.0
        DoubleUnaryOperator drift = t -> 140 + 1.2 * t / 3600;
        assertThat(heldAt(fahrenheit(PublishedRule.EVERY_MINUTE_HALF_DEGF), 0, 7200, 1, drift))
                .isNaN();
        assertThat(heldAt(fahrenheit(PublishedRule.EVERY_MINUTE_1_DEGF), 0, 7200, 1, drift))
                .isEqualTo(1800);
    }

    @Test
    void minutesWhoseTimesJitterAreNoMissingReadings() {
        RuleWatch watch = fahrenheit(PublishedRule.EVERY_MINUTE_HALF_DEGF);
        double[] jitter = {0, -0.3, 0.4, -0.2, 0.1};
        for (int i = 0; i <= 31; i++) {
            watch.accept(60 * i + jitter[i % jitter.length], 140);
        }
        assertThat(watch.holds()).isTrue();
        assertThat(watch.state().fromSeconds()).isLessThan(61);
    }

    @Test
    void aMinuteWithoutAReadingStartsAgain() {
        RuleWatch watch = fahrenheit(PublishedRule.EVERY_MINUTE_HALF_DEGF);
        each(watch, 0, 1200, 60, t -> 140);
        assertThat(heldAt(watch, 1320, 9000, 60, t -> 140)).isEqualTo(1320 + 1800);
    }

    // AHRI 210/240, operating tolerance (from memory): the range of 30 minutes within 2.0 degF
    @Test
    void halfAnHourWithinItsRange() {
        RuleWatch watch = fahrenheit(PublishedRule.HALF_HOUR_2_DEGF);
        DoubleUnaryOperator swing = t -> t % 2 == 0 ? 69 : 71;
        assertThat(heldAt(watch, 0, 4000, 1, swing)).isEqualTo(1800);
        RuleState state = watch.state();
        assertThat(state.value()).isCloseTo(70, within(1e-9));
        assertThat(state.uncertainty()).isCloseTo(2 / Math.sqrt(3), within(1e-12));
        assertThat(state.secondsToGo()).isZero();
        assertThat(state.reason())
                .isEqualTo("steady by half-hour-2-degf: all readings of the last 30 min lie within 2, limit 2");
        watch.accept(1801, 71.01);
        assertThat(watch.holds()).as("one reading beyond it, at once").isFalse();
        assertThat(watch.state().reason())
                .isEqualTo("not yet by half-hour-2-degf: all readings of the last 30 min lie within 2.01, limit 2");
        // That reading lies in the minute that ends at 1860 and leaves the half hour 30 minutes later.
        assertThat(heldAt(watch, 1802, 6000, 1, swing)).isEqualTo(3660);
        assertThat(watch.state().fromSeconds()).isEqualTo(1860);
    }

    @Test
    void halfAnHourCountsItsMinutes() {
        RuleWatch watch = fahrenheit(PublishedRule.HALF_HOUR_2_DEGF);
        each(watch, 0, 130, 1, t -> 70);
        assertThat(watch.state().reason()).isEqualTo("not yet by half-hour-2-degf: minute 3 of 30, more in 1670 s");
        each(watch, 150, 1200, 30, t -> 70);
        assertThat(watch.state().reason())
                .as("the second pause of that length is none")
                .contains("minute 18 of 30")
                .contains("counted afresh: gap of 20 s");
    }

    @Test
    void anEmptyMinuteIsAMissingReading() {
        RuleWatch watch = new RuleWatch(PublishedRule.HALF_HOUR_2_DEGF, 1, 100);
        each(watch, 0, 600, 50, t -> 70);
        watch.accept(600 + 121, 70);
        assertThat(watch.state().reason()).contains("minute 1 of 30").contains("gap of 121 s");
        each(watch, 750, 950, 50, t -> 70);
        assertThat(watch.state().reason()).contains("minute 4 of 30");
        RuleWatch patient = new RuleWatch(PublishedRule.HALF_HOUR_2_DEGF, 1, 200);
        each(patient, 0, 600, 50, t -> 70);
        patient.accept(780, 70);
        assertThat(patient.state().reason()).contains("minute 1 of 30").contains("a reading was missing");
    }

    // 10 CFR 431 Subpart G Appendix A, 5.3: 10-minute rates, not more than 2 % between them
    @ParameterizedTest
    @CsvSource({
        "100,102,true",
        "102,100,true",
        "100,102.1,false",
        "100,97.9,false",
        "-100,-102,true",
        "0,0,false",
        "-1,1,false"
    })
    void twoRatesAreHeldToTheSmaller(double first, double second, boolean holds) {
        RuleWatch watch = new RuleWatch(PublishedRule.RATES_2_PERCENT, 1, 15);
        // At the boundary both are heard within a hundredth of a second, which is a thousandth of a per mille of the
        // mean.
        each(watch, 0, 600, 1, t -> first);
        each(watch, 600.0001, 1200.01, 1, t -> second);
        watch.accept(1200.5, second);
        assertThat(watch.holds()).isEqualTo(holds);
        assertThat(watch.state().fromSeconds()).isZero();
        if (holds) {
            assertThat(watch.state().value()).isCloseTo((first + second) / 2, within(1e-4));
            assertThat(watch.state().reason()).contains("differ by 2 %, limit 2 %");
            assertThat(watch.state().secondsToGo()).isCloseTo(599.5, within(1e-6));
        } else if (first * second <= 0) {
            assertThat(watch.state().reason()).contains("are no rates of one direction");
        } else {
            assertThat(watch.state().reason()).contains("limit 2 %").contains("more in 600 s");
        }
    }

    @Test
    void aRateIsTheMeanOverItsTenMinutesHoweverTheSamplesCome() {
        // From 90 to 110 within each ten minutes: every mean is 100, though the samples crowd at the end.
        DoubleUnaryOperator saw = t -> 90 + 20 * (t % 600) / 600;
        RuleWatch watch = new RuleWatch(PublishedRule.RATES_2_PERCENT, 1, 15);
        double t = 0;
        while (t < 1199.9999) {
            watch.accept(t, saw.applyAsDouble(t));
            double in = t % 600;
            t = in < 400 ? t + 10 : in < 599.9 ? t + 0.1 : Math.ceil(t / 600) * 600;
        }
        watch.accept(1200, saw.applyAsDouble(1199.9999999));
        assertThat(watch.holds()).isTrue();
        assertThat(watch.state().value()).isCloseTo(100, within(0.01));
    }

    @Test
    void ratesByHandAreCountedToo() {
        RuleWatch watch = spaced(new RuleWatch(PublishedRule.RATES_2_PERCENT, 1, 15), 600, 100, 100);
        assertThat(watch.state().reason()).isEqualTo("not yet by rates-2-percent: rate 2 of 2, more in 600 s");
        watch.accept(1200, 101);
        assertThat(watch.holds()).isTrue();
        watch.accept(2000, 101);
        assertThat(watch.state().reason()).contains("rate 1 of 2").contains("gap of 800 s");
    }

    @Test
    void twoPeriodsAtOnceAreAMissingReading() {
        RuleWatch watch = new RuleWatch(PublishedRule.RATES_2_PERCENT, 1, 1300);
        each(watch, 0, 500, 1, t -> 100);
        watch.accept(1250, 100);
        assertThat(watch.state().reason()).contains("rate 1 of 2").contains("a reading was missing");
    }

    @ParameterizedTest
    @EnumSource(PublishedRule.class)
    void anotherUnitDecidesTheSame(PublishedRule rule) {
        DoubleUnaryOperator course = t -> 200 + 40 * Math.exp(-t / 400) + 0.3 * Math.sin(t / 7);
        List<Boolean> before = new ArrayList<>();
        List<Boolean> after = new ArrayList<>();
        double factor = rule.dimension() == Dimension.TEMPERATURE ? 5.0 / 9 : 249.08891;
        double offset = rule.dimension() == Dimension.TEMPERATURE ? -32 : 0;
        RuleWatch own = fahrenheit(rule);
        RuleWatch other = new RuleWatch(rule, factor, 15);
        for (double t = 0; t < 6000; t++) {
            own.accept(t, course.applyAsDouble(t));
            other.accept(1e9 + t, (course.applyAsDouble(t) + offset) * factor);
            before.add(own.holds());
            after.add(other.holds());
        }
        assertThat(before).contains(true).contains(false);
        assertThat(after).isEqualTo(before);
    }

    @ParameterizedTest
    @EnumSource(PublishedRule.class)
    void whatComesLaterChangesNothingBefore(PublishedRule rule) {
        RuleWatch whole = fahrenheit(rule);
        RuleWatch cut = fahrenheit(rule);
        DoubleUnaryOperator course = t -> 100 + 10 * Math.exp(-t / 300);
        each(whole, 0, 3000, 3, course);
        each(cut, 0, 3000, 3, course);
        RuleState then = cut.state();
        each(cut, 3003, 9000, 3, t -> 500);
        assertThat(whole.state()).isEqualTo(then);
    }

    @ParameterizedTest
    @EnumSource(PublishedRule.class)
    void aRampNeverHolds(PublishedRule rule) {
        // 30 degF an hour is 15 within 30 minutes; as a rate 5 % in 10 minutes.
        assertThat(heldAt(fahrenheit(rule), 0, 7200, 1, t -> 100 * Math.exp(0.05 * t / 600)))
                .isNaN();
    }

    @ParameterizedTest
    @EnumSource(PublishedRule.class)
    void namesAndSourcesAreThere(PublishedRule rule) {
        assertThat(PublishedRule.ofKey(rule.key())).contains(rule);
        assertThat(PublishedRule.keys()).contains(rule.key());
        assertThat(rule.key()).matches("[a-z][a-z0-9-]{0,63}");
        assertThat(rule.source()).containsAnyOf("10 CFR", "AHRI");
        assertThat(rule.words()).isNotBlank();
        assertThat(PublishedRule.ofKey("two-readings")).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void refusesAFactorThatIsNone(double factor) {
        assertThatThrownBy(() -> new RuleWatch(PublishedRule.RATES_2_PERCENT, factor, 15))
                .hasMessageContaining("factor of the unit must be positive, got " + factor);
        double gap = factor > 0 ? Double.NaN : factor;
        assertThatThrownBy(() -> new RuleWatch(PublishedRule.RATES_2_PERCENT, 1, gap))
                .hasMessageContaining("gap must be positive");
    }

    @Test
    void samplesThatAreNotLaterAreIgnored() {
        RuleWatch watch = fahrenheit(PublishedRule.THREE_READINGS_3_DEGF);
        watch.accept(0, 400);
        watch.accept(0, 900);
        watch.accept(-5, 900);
        watch.accept(Double.NaN, 900);
        assertThat(watch.state().timeSeconds()).isZero();
        assertThat(watch.state().reason()).contains("reading 1 of 3");
    }

    /** In degrees Celsius a deviation of 2.2 is 4 degF. */
    @Test
    void threeAndFiveDegreesAreFahrenheitWhateverTheUnit() {
        RuleWatch three =
                spaced(new RuleWatch(PublishedRule.THREE_READINGS_3_DEGF, 5 / 9.0, 15), QUARTER, 100, 100, 103.3);
        assertThat(three.holds()).isFalse();
        RuleWatch five =
                spaced(new RuleWatch(PublishedRule.THREE_READINGS_5_DEGF, 5 / 9.0, 15), QUARTER, 100, 100, 103.3);
        assertThat(five.holds()).isTrue();
        RuleWatch wide =
                spaced(new RuleWatch(PublishedRule.THREE_READINGS_5_DEGF, 5 / 9.0, 15), QUARTER, 100, 100, 105);
        assertThat(wide.holds()).isFalse();
    }
}
