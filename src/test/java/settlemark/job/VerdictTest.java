package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.measure.Unit;

final class VerdictTest {
    /** The four cases of ILAC-G8:09/2019, 4.2.3, with a guard band as wide as the uncertainty; arithmetic by hand. */
    @ParameterizedTest
    @CsvSource({
        "3.50, 0.04, INSIDE",
        "3.81, 0.04, INSIDE",
        "3.83, 0.04, CLOSE_INSIDE",
        "3.85, 0.00, INSIDE",
        "3.87, 0.04, CLOSE_OUTSIDE",
        "3.90, 0.04, OUTSIDE",
        "3.13, 0.04, CLOSE_OUTSIDE",
        "3.09, 0.04, OUTSIDE",
        "3.17, 0.04, CLOSE_INSIDE"
    })
    void liesWhereItsIntervalLies(double value, double expanded, Outcome expected) {
        Limit limit = Limit.around(3.5, 0.35, Unit.INCH_OF_WATER, "plate");
        assertThat(Verdict.judge("manifold", value, expanded, limit).outcome()).isEqualTo(expected);
    }

    @Test
    void aLimitSaysWhereItComesFromAndRunsFromLowToHigh() {
        assertThatThrownBy(() -> new Limit(1, 2, Unit.PASCAL, " ")).hasMessageContaining("where it comes from");
        assertThatThrownBy(() -> new Limit(2, 1, Unit.PASCAL, "plate")).hasMessageContaining("2.0 to 1.0");
    }

    @Test
    void aValueThatIsNoNumberIsNotJudged() {
        Limit limit = Limit.around(1, 1, Unit.PASCAL, "plate");
        assertThatThrownBy(() -> Verdict.judge("inlet", Double.NaN, 0.1, limit)).hasMessageContaining("inlet");
    }

    @Test
    void aLimitOfDifferencesConvertsWithoutTheOffset() {
        Limit rise = new Limit(30, 60, Unit.FAHRENHEIT_DIFFERENCE, "plate");
        assertThat(rise.to(Unit.CELSIUS.difference()).upper())
                .isCloseTo(100 / 3.0, org.assertj.core.api.Assertions.within(1e-9));
    }
}
