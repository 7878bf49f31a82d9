package settlemark.calc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Spreads whose exact values follow from the moments of the normal distribution, by hand. */
final class PropagationTest {
    private static Propagation of(ToDoubleFunction<double[]> function, double[] x, double... u) {
        return new Propagation(function, x, u);
    }

    private static double[] at(double... x) {
        return x;
    }

    @Test
    void aSumAddsItsSpreadsAtRightAngles() {
        Propagation sum = of(x -> 2 * x[0] - x[1] + 7, at(10, 20), 1.5, 4);
        assertThat(sum.sensitivity(0)).isCloseTo(2, within(1e-9));
        assertThat(sum.sensitivity(1)).isCloseTo(-1, within(1e-9));
        assertThat(sum.contribution(0)).isCloseTo(3, within(1e-9));
        assertThat(sum.contribution(1)).isCloseTo(4, within(1e-9));
        assertThat(sum.firstOrder()).isCloseTo(5, within(1e-9));
        assertThat(sum.isLinear()).isTrue();
    }

    @Test
    void anExactInputAddsNothing() {
        Propagation product = of(x -> x[0] * x[1], at(3, 5), 0, 0.2);
        assertThat(product.sensitivity(0)).isZero();
        assertThat(product.contribution(0)).isZero();
        assertThat(product.firstOrder()).isCloseTo(0.6, within(1e-9));
        assertThat(product.isLinear()).isTrue();
        Propagation exact = of(x -> x[0] * x[0], at(3), 0);
        assertThat(exact.firstOrder()).isZero();
        assertThat(exact.isLinear()).isTrue();
    }

    /**
     * A square of N(m, u): standard deviation sqrt(4 m2 u2 + 2 u4), first order 2 m u, so they are 1 % apart where u/m is
     * 0.2006. The same for its slope turned.
     */
    @ParameterizedTest
    @CsvSource({"10, 1.95, true", "10, 2.05, false", "-10, 1.95, true", "-10, 2.05, false", "0, 1, false"})
    void aSquareIsLinearWhileItsSpreadIsSmall(double mean, double u, boolean linear) {
        assertThat(of(x -> x[0] * x[0], at(mean), u).isLinear()).isEqualTo(linear);
        assertThat(of(x -> 5 - x[0] * x[0], at(mean), u).isLinear()).isEqualTo(linear);
    }

    /**
     * A cube of N(m, u): variance 9 m4 u2 + 36 m2 u4 + 15 u6, first order 3 m2 u, so they are 1 % apart where u/m is
     * 0.0707.
     */
    @ParameterizedTest
    @CsvSource({"10, 0.69, true", "10, 0.73, false"})
    void aCubeIsLinearWhileItsSpreadIsSmall(double mean, double u, boolean linear) {
        assertThat(of(x -> x[0] * x[0] * x[0], at(mean), u).isLinear()).isEqualTo(linear);
    }

    /**
     * A product of two: variance b2 u2 + a2 v2 + u2 v2. With equal relative spreads r the exact one is sqrt(1 + r2/2)
     * times the first order, 1 % apart where r is 0.2005.
     */
    @ParameterizedTest
    @CsvSource({"0.195, true", "0.205, false"})
    void aProductIsLinearWhileBothSpreadsAreSmall(double relative, boolean linear) {
        assertThat(of(x -> x[0] * x[1], at(4, 7), 4 * relative, 7 * relative).isLinear())
                .isEqualTo(linear);
        assertThat(of(x -> x[2] - x[0] * x[1], at(4, 7, 1), 4 * relative, 7 * relative, 0)
                        .isLinear())
                .isEqualTo(linear);
        assertThat(of(x -> x[0] * x[1] * x[2], at(4, 2, 7), 4 * relative, 0, 7 * relative)
                        .isLinear())
                .isEqualTo(linear);
    }

    @Test
    void aFunctionThatEndsWithinTheSpreadIsNotLinear() {
        assertThat(of(x -> Math.sqrt(x[0]), at(1), 0.1).isLinear()).isTrue();
        assertThat(of(x -> Math.sqrt(x[0]), at(1), 0.7).isLinear()).isFalse();
    }

    @Test
    void anInputAtZeroHasASlopeToo() {
        Propagation line = of(x -> 3 * x[0] + 1, at(0), 0.5);
        assertThat(line.firstOrder()).isCloseTo(1.5, within(1e-9));
        assertThat(line.isLinear()).isTrue();
    }
}
