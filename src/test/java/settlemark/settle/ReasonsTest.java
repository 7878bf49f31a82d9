package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.Random;
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
    void swingsAreSaidWithTheBand() {
        Reasons reasons = new Reasons(SettleSettings.defaults(SettleKind.GAS));
        assertThat(reasons.swings(0.0812)).isEqualTo("swings ±0.0812, limit ±0.05");
        assertThat(reasons.swung(0.0812)).isEqualTo("swung ±0.0812 a while ago, limit ±0.05");
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

    @Test
    void theQuickWayToThreeDigitsIsTheExactOne() {
        Random random = new Random(20261126);
        for (int i = 0; i < 200_000; i++) {
            double amount = Math.pow(10, random.nextDouble() * 12 - 6) * (random.nextBoolean() ? 1 : -1);
            if (i % 4 == 0) {
                // Halves and round numbers, which a quick way gets wrong first.
                amount = Math.rint(amount * 2000) / 2000;
            }
            BigDecimal exact = new BigDecimal(amount)
                    .round(new MathContext(3, RoundingMode.HALF_EVEN))
                    .stripTrailingZeros();
            double size = Math.abs(amount);
            String said = amount == 0 ? "0" : size < 1e-4 || size >= 1e6 ? exact.toString() : exact.toPlainString();
            assertThat(Reasons.digits(amount)).as("%s, seed 20261126", amount).isEqualTo(said);
        }
    }

    @Test
    void theQuickWayToWholeSecondsIsTheExactOne() {
        Random random = new Random(20261126);
        Reasons reasons = new Reasons(SettleSettings.defaults(SettleKind.GAS));
        for (int i = 0; i < 100_000; i++) {
            double pause = random.nextInt(3) == 0 ? random.nextInt(4000) / 2.0 : random.nextDouble() * 2000;
            assertThat(reasons.gap(pause))
                    .as("%s, seed 20261126", pause)
                    .isEqualTo(String.format(Locale.ROOT, "gap of %.0f s", pause));
        }
    }
}
