package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class NumbersTest {
    @Test
    void decimalsFollowTheSettlingLimit() {
        assertThat(Numbers.decimals(0.02)).isEqualTo(2);
        assertThat(Numbers.decimals(0.5)).isEqualTo(1);
        assertThat(Numbers.decimals(0.28)).isEqualTo(1);
        assertThat(Numbers.decimals(5)).isEqualTo(0);
        assertThat(Numbers.decimals(0.005)).isEqualTo(3);
        assertThat(Numbers.decimals(0.1)).isEqualTo(1);
        assertThat(Numbers.decimals(Double.NaN)).isEqualTo(2);
    }

    @Test
    void valuesHaveATrueMinusAndNoNegativeZero() {
        assertThat(Numbers.fixed(-1.234, 2)).isEqualTo("\u22121.23");
        assertThat(Numbers.fixed(-0.001, 2)).isEqualTo("0.00");
        assertThat(Numbers.fixed(Double.NaN, 2)).isEqualTo("\u2013");
        assertThat(Numbers.signed(0.35, 2)).isEqualTo("+0.35");
    }

    @Test
    void boundsAreNeverRoundedDown() {
        assertThat(Numbers.bound(0.0204, 2)).isEqualTo("0.021");
        assertThat(Numbers.bound(0.009, 2)).isEqualTo("0.009");
        assertThat(Numbers.bound(0.45 * 0.02, 2)).isEqualTo("0.009");
        assertThat(Numbers.bound(0.013, 2)).isEqualTo("0.013");
        assertThat(Numbers.bound(1.3, 1)).isEqualTo("1.3");
        assertThat(Numbers.bound(123, 1)).isEqualTo("123");
        assertThat(Numbers.plusMinus(0.02, 2)).isEqualTo("\u00b10.02");
        assertThat(Numbers.plusMinus(0.021, 2)).isEqualTo("\u00b10.03");
    }

    @Test
    void setValuesLoseTheirZeros() {
        assertThat(Numbers.plain(3.50)).isEqualTo("3.5");
        assertThat(Numbers.plain(30)).isEqualTo("30");
        assertThat(Numbers.plain(-0.5)).isEqualTo("\u22120.5");
        assertThat(VerdictBox.range(30, 60)).isEqualTo("30 to 60");
        assertThat(VerdictBox.range(Double.NEGATIVE_INFINITY, 0.2)).isEqualTo("at most 0.2");
    }

    @Test
    void agesGrowUnits() {
        assertThat(Numbers.age(12_400_000_000L)).isEqualTo("12 s");
        assertThat(Numbers.age(300_000_000_000L)).isEqualTo("5 min");
    }
}
