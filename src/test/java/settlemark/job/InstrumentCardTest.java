package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import settlemark.measure.Unit;
import settlemark.settle.FromInstrument;

final class InstrumentCardTest {
    private static final double CLOSE = 1e-12;

    private static CorrectionPoint point(String channel, double trueValue, double indicated, double u) {
        return new CorrectionPoint(channel, trueValue, indicated, u, Unit.INCH_OF_WATER);
    }

    private static InstrumentCard card(CorrectionPoint... points) {
        return new InstrumentCard("A-17", "blue gauge", "gauge", Optional.empty(), Optional.empty(), List.of(points));
    }

    /**
     * Worked by hand: 7.55 lies half way between 5.06 and 10.04 (2.49 of 4.98), so the correction is half way between
     * 5 - 5.06 = -0.06 and 10 - 10.04 = -0.04, which is -0.05, and U half way between 0.02 and 0.03; 1.265 is a quarter
     * of 5.06, so a quarter of -0.06, and U 0.01 + 0.01 / 4. Linear interpolation of another program (NumPy's interp)
     * gives the same four numbers.
     */
    @Test
    void betweenPointsTheCorrectionIsAStraightLine() {
        InstrumentCard card = card(point("", 10, 10.04, 0.03), point("", 0, 0, 0.01), point("", 5, 5.06, 0.02));
        FromInstrument half = card.at("p1", Unit.INCH_OF_WATER, 7.55);
        assertThat(half.correction()).isCloseTo(-0.05, within(CLOSE));
        assertThat(half.expandedUncertainty()).isCloseTo(0.025, within(CLOSE));
        FromInstrument quarter = card.at("p1", Unit.INCH_OF_WATER, 1.265);
        assertThat(quarter.correction()).isCloseTo(-0.015, within(CLOSE));
        assertThat(quarter.expandedUncertainty()).isCloseTo(0.0125, within(CLOSE));
        assertThat(card.at("p1", Unit.INCH_OF_WATER, 10.04).correction()).isCloseTo(-0.04, within(CLOSE));
    }

    @Test
    void outsideThePointsNothingIsMadeUpAndThatIsSaid() {
        InstrumentCard card = card(point("", 0, 0, 0.01), point("", 10, 10.04, 0.03));
        for (double outside : new double[] {-0.0101, 10.0701}) {
            FromInstrument none = card.at("p1", Unit.INCH_OF_WATER, outside);
            assertThat(none.corrects()).isFalse();
            assertThat(none.remark())
                    .contains("outside the correction points, 0 to 10.04")
                    .contains("not corrected");
            assertThat(none.serial()).isEqualTo("A-17");
        }
    }

    @Test
    void noiseAboutTheOutermostPointsIsNotOutside() {
        InstrumentCard card = card(point("", 0, 0.02, 0.01), point("", 10, 10.04, 0.03));
        for (double low : new double[] {0.02, 0.0101}) {
            assertThat(card.at("p1", Unit.INCH_OF_WATER, low)).isEqualTo(card.at("p1", Unit.INCH_OF_WATER, 0.02));
        }
        assertThat(card.at("p1", Unit.INCH_OF_WATER, 0.02).correction()).isCloseTo(-0.02, within(CLOSE));
        FromInstrument high = card.at("p1", Unit.INCH_OF_WATER, 10.069);
        assertThat(high.correction()).isCloseTo(-0.04, within(CLOSE));
        assertThat(high.expandedUncertainty()).isCloseTo(0.03, within(CLOSE));
    }

    /** 1 inH2O at 4 C is 249.08891 Pa by UCUM; 100 degF is 37.777... C (definitions). */
    @Test
    void pointsAreUsedInWhateverUnitIsRead() {
        double pascal = Unit.INCH_OF_WATER.to(Unit.ucum("Pa")).apply(1);
        FromInstrument inPascal =
                card(point("", 0, 0, 0.02), point("", 10, 10.1, 0.02)).at("p1", Unit.ucum("Pa"), 5.05 * pascal);
        assertThat(inPascal.correction()).isCloseTo(-0.05 * pascal, within(1e-9));
        assertThat(inPascal.expandedUncertainty()).isCloseTo(0.02 * pascal, within(1e-9));
        InstrumentCard air = card(
                new CorrectionPoint("", 0, 0.5, 0.2, Unit.CELSIUS),
                new CorrectionPoint("", 100, 100.5, 0.2, Unit.CELSIUS));
        FromInstrument inFahrenheit = air.at("left", Unit.FAHRENHEIT, 100);
        assertThat(inFahrenheit.correction()).isCloseTo(-0.9, within(1e-9));
        assertThat(inFahrenheit.expandedUncertainty()).isCloseTo(0.36, within(1e-9));
    }

    @Test
    void aChannelsOwnPointsGoBeforeThoseForAll() {
        InstrumentCard card = card(
                point("", 0, 0, 0.01), point("", 10, 10.1, 0.01), point("p2", 0, 0, 0.01), point("p2", 10, 9.9, 0.01));
        assertThat(card.at("p1", Unit.INCH_OF_WATER, 10.1).correction()).isCloseTo(-0.1, within(CLOSE));
        assertThat(card.at("p2", Unit.INCH_OF_WATER, 9.9).correction()).isCloseTo(0.1, within(CLOSE));
        assertThat(card.at("p2", Unit.INCH_OF_WATER, 10.1).corrects()).isFalse();
        assertThat(card.at("p1", Unit.FAHRENHEIT, 5)).isEqualTo(FromInstrument.uncorrected("A-17", ""));
        assertThat(card.channels()).containsExactly("", "p2");
    }

    @Test
    void whatCannotBeIsRefusedWithTheRemedy() {
        assertThatThrownBy(() -> card(point("", 1, 1, 0.1)))
                .hasMessageContaining("one correction point alone")
                .hasMessageContaining("A-17");
        assertThatThrownBy(() -> card(point("", 1, 1, 0.1), point("", 1.1, 1, 0.1)))
                .hasMessageContaining("two correction points where it indicates 1.0");
        assertThatThrownBy(() -> card(point("", 1, 1, 0.1), point("", 0.5, 2, 0.1)))
                .hasMessageContaining("other way around");
        assertThatThrownBy(() -> point("", Double.NaN, 1, 0.1)).hasMessageContaining("as numbers");
        assertThatThrownBy(() -> point("", 1, 1, -0.1)).hasMessageContaining("0 or more, got -0.1");
        assertThatThrownBy(() -> InstrumentCard.unknown(" ", "", ""))
                .hasMessageContaining("copy it from the instrument");
        assertThatThrownBy(() -> InstrumentCard.unknown("A\u202e7", "", "")).hasMessageContaining("printable");
        LocalDate day = LocalDate.of(2026, 3, 14);
        assertThatThrownBy(() ->
                        new InstrumentCard("A", "", "", Optional.of(day), Optional.of(day.minusDays(1)), List.of()))
                .hasMessageContaining("due on 2026-03-13");
    }

    @Test
    void overdueBeginsTheDayAfter() {
        LocalDate day = LocalDate.of(2026, 3, 14);
        InstrumentCard card = new InstrumentCard("A", "", "", Optional.empty(), Optional.of(day), List.of());
        assertThat(card.overdue(day)).isFalse();
        assertThat(card.overdue(day.plusDays(1))).isTrue();
        assertThat(InstrumentCard.unknown("A", "", "").overdue(day)).isFalse();
    }
}
