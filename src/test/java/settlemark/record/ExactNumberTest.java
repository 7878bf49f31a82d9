package settlemark.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class ExactNumberTest {
    private static void comesBack(double value) {
        String text = ExactNumber.text(value);
        assertThat(Double.doubleToRawLongBits(ExactNumber.read(text)))
                .as(text)
                .isEqualTo(Double.doubleToRawLongBits(value));
    }

    @Test
    void everyDoubleComesBackBitForBit() {
        long seed = System.nanoTime();
        System.out.println("seed " + seed);
        Random random = new Random(seed);
        for (int i = 0; i < 200_000; i++) {
            comesBack(Double.longBitsToDouble(random.nextLong()));
            // where all exponent bits are set: infinities and NaNs of every kind, quiet and signalling
            comesBack(Double.longBitsToDouble(random.nextLong() | 0x7ff0000000000000L));
            comesBack(Double.longBitsToDouble(random.nextLong() & 0x800fffffffffffffL));
        }
    }

    @ParameterizedTest
    @ValueSource(
            doubles = {
                0.0,
                -0.0,
                Double.NaN,
                Double.MIN_VALUE,
                -Double.MIN_VALUE,
                Double.MIN_NORMAL,
                Double.MAX_VALUE,
                Double.POSITIVE_INFINITY,
                Double.NEGATIVE_INFINITY,
                0.1,
                2.0e-3,
                9007199254740993.0
            })
    void specialOnesToo(double value) {
        comesBack(value);
    }

    @ParameterizedTest
    @CsvSource({"3.52, 3.52", "-3, -3", "+.5, 0.5", "5., 5", "1e3, 1000", "-Infinity, -Infinity"})
    void otherSpellingsAreRead(String text, double value) {
        assertThat(ExactNumber.read(text)).isEqualTo(value);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                " ",
                "3,52",
                "nan",
                "inf",
                "0x1p3",
                "1d",
                "1f",
                "1e",
                "--1",
                "NaN:",
                "NaN:12",
                "NaN:4000000000000000"
            })
    void anythingElseIsRefused(String text) {
        assertThatThrownBy(() -> ExactNumber.read(text))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("with a point");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"=1+1", "+1", "-1", "@SUM(A1)", "\tx", "\rx", "\nx", "'x", "\uff1dx", "''", "plain", "", "a=b"})
    void guardedTextComesBackAndIsNoFormula(String text) {
        String cell = GuardedText.of(text);
        assertThat(GuardedText.read(cell)).isEqualTo(text);
        assertThat(cell)
                .doesNotStartWith("=")
                .doesNotStartWith("+")
                .doesNotStartWith("-")
                .doesNotStartWith("@");
    }
}
