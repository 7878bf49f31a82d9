package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

final class CurveEquationsTest {
    private static final double HORIZON = 180;
    private static final double TAU = 40;
    private static final int BINS = 60;

    private final CurveEquations equations = new CurveEquations();
    private final double[] times = new double[BINS];
    private final double[] decays = new double[BINS];
    private final double[] values = new double[BINS];

    private boolean solve(double level, double ramp, double amplitude, double tauStep, int bins) {
        for (int i = 0; i < BINS; i++) {
            times[i] = 3.0 * (i - BINS) + 0.1 * (i % 3);
            decays[i] = Math.exp(-times[i] / TAU);
            double g = amplitude * decays[i];
            values[i] = level + ramp * times[i] / HORIZON + g + tauStep * g * times[i] / TAU;
        }
        return equations.solve(times, values, decays, bins, HORIZON, TAU);
    }

    @Test
    void aCurveOfItsOwnFormIsFoundAgain() {
        assertThat(solve(3, -0.7, -2, 0, BINS)).isTrue();
        assertThat(equations.level()).isCloseTo(3, within(1e-9));
        assertThat(equations.ramp()).isCloseTo(-0.7, within(1e-9));
        assertThat(equations.amplitude()).isCloseTo(-2, within(1e-10));
    }

    @Test
    void aTimeConstantThatIsOffIsFoundBesideTheOthers() {
        assertThat(solve(3, 0.5, -2, 0.01, BINS)).isTrue();
        double about = equations.amplitude();
        assertThat(equations.solveWithTau()).isTrue();
        assertThat(equations.level()).isCloseTo(3, within(1e-8));
        assertThat(equations.ramp()).isCloseTo(0.5, within(1e-8));
        assertThat(equations.amplitude()).isCloseTo(-2, within(1e-9));
        assertThat(equations.tauStep() * about).isCloseTo(-2 * 0.01, within(1e-9));
    }

    @Test
    void tooFewBinsCannotTellThemApart() {
        assertThat(solve(3, -0.7, -2, 0, 2)).isFalse();
        assertThat(equations.level()).isZero();
        assertThat(equations.solveWithTau()).isFalse();
    }

    @Test
    void whereNothingApproachesThereIsNoTimeConstant() {
        assertThat(solve(0, 0, 0, 0, BINS)).isTrue();
        assertThat(equations.solveWithTau()).isFalse();
    }

    @Test
    void whitenedWeightsGiveTheInverseOfTheNormalMatrix() {
        assertThat(solve(3, 0.5, -2, 0, BINS)).isTrue();
        assertThat(equations.solveWithTau()).isTrue();
        double[][] normal = normalMatrix(equations.amplitude());
        for (int j = 0; j < CurveEquations.UNKNOWNS; j++) {
            for (int k = 0; k < CurveEquations.UNKNOWNS; k++) {
                double sum = 0;
                for (int l = 0; l < CurveEquations.UNKNOWNS; l++) {
                    sum += normal[j][l] * product(l, k);
                }
                assertThat(sum).as("%d %d", j, k).isCloseTo(j == k ? 1 : 0, within(1e-6));
            }
        }
    }

    private double product(int one, int other) {
        double[] a = new double[CurveEquations.UNKNOWNS];
        double[] b = new double[CurveEquations.UNKNOWNS];
        a[one] = 1;
        b[other] = 1;
        equations.whiten(a);
        equations.whiten(b);
        double sum = 0;
        for (int j = 0; j < a.length; j++) {
            sum += a[j] * b[j];
        }
        return sum;
    }

    private double[][] normalMatrix(double amplitude) {
        double[][] normal = new double[CurveEquations.UNKNOWNS][CurveEquations.UNKNOWNS];
        for (int i = 0; i < BINS; i++) {
            double[] row = {1, times[i] / HORIZON, decays[i], amplitude * decays[i] * times[i] / TAU};
            for (int j = 0; j < row.length; j++) {
                for (int k = 0; k < row.length; k++) {
                    normal[j][k] += row[j] * row[k];
                }
            }
        }
        return normal;
    }

    @Test
    void theShortSeriesIsTheExponential() {
        for (double x = -0.1; x <= 0.1; x += 0.001) {
            assertThat(ApproachFit.exponentialOfSmall(x)).isCloseTo(Math.exp(x), within(3e-15));
        }
    }
}
