package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class ReasonsTest {
    @ParameterizedTest
    @CsvSource({
        "GAS,1,0.01,1.2346,1.235",
        "GAS,1,0.05,1.2346,1.235",
        "GAS,1,0.001,1.23456,1.2346",
        "GAS,249.08891,1,307.64,307.6",
        "GAS,249.08891,10,307.6,308",
        "AIR,1,0.1,66.071,66.07",
        "AIR,1,0.5,66.071,66.07",
        "STACK,1,1,391.72,391.7",
        "STACK,1,20,391.72,392",
        "GAS,1,0,1.23456,1.235",
        "AIR,1,0,66.0712,66.07",
    })
    void levelsAreSaidWithOneDecimalMoreThanTheProbeCountsIn(
            SettleKind kind, double factor, double resolution, double level, String said) {
        Reasons reasons = new Reasons(SettleSettings.defaults(kind).scaled(factor));
        assertThat(reasons.changed(-level, resolution)).isEqualTo("changed by " + said);
        assertThat(reasons.movedAway(level, resolution)).isEqualTo("moved away from " + said);
    }

    @ParameterizedTest
    @CsvSource({"7,7", "7.4,7", "7.6,8", "0,0", "0.2,0", "2e9,2000000000"})
    void timesAreWholeSeconds(double seconds, String said) {
        assertThat(new Reasons(SettleSettings.defaults(SettleKind.GAS)).gap(seconds))
                .isEqualTo("gap of " + said + " s");
    }

    @Test
    void whatIsNoNumberIsSaidAsItIs() {
        assertThat(Reasons.digits(Double.POSITIVE_INFINITY)).isEqualTo("Infinity");
        assertThat(Reasons.digits(Double.NaN)).isEqualTo("NaN");
    }

    @ParameterizedTest
    @CsvSource({"0,0", "0.0123456,0.0123", "1234567.8,1.23E+6", "0.00001234,0.0000123", "0.0000000001234,1.23E-10"})
    void amountsHaveThreeDigits(double amount, String said) {
        assertThat(Reasons.digits(amount)).isEqualTo(said);
    }
}
