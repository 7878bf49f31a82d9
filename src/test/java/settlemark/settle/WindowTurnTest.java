package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A ramp that begins within a window, beside its line, against the same three unknowns solved at length. */
final class WindowTurnTest {
    private static final int BINS = 20;

    private static double[] values(double began, double perSecond, double sigma) {
        Random random = new Random(31);
        double[] values = new double[BINS];
        for (int i = 0; i < BINS; i++) {
            values[i] = 3 + 0.01 * i + perSecond * Math.max(0, i - began) + sigma * random.nextGaussian();
        }
        return values;
    }

    private static WindowFit fit(double[] values) {
        BinRing ring = new BinRing(1, 2 * BINS);
        for (int i = 0; i < values.length; i++) {
            ring.add(i, values[i]);
        }
        ring.add(BINS, 0);
        WindowFit window = new WindowFit(BINS, 1, new WindowFit.Room(2 * BINS));
        window.fit(ring, BINS, 0);
        return window;
    }

    /** Coefficient of the third column and its standard error, by Gauss and Jordan on the normal equations. */
    private static double[] solvedAtLength(double[] values, double began) {
        double[][] m = new double[3][6];
        double[] right = new double[3];
        for (int i = 0; i < BINS; i++) {
            double[] row = {1, i, Math.max(0, i - began)};
            for (int a = 0; a < 3; a++) {
                right[a] += row[a] * values[i];
                m[a][3 + a] = 1;
                for (int b = 0; b < 3; b++) {
                    m[a][b] += row[a] * row[b];
                }
            }
        }
        for (int p = 0; p < 3; p++) {
            double pivot = m[p][p];
            for (int c = 0; c < 6; c++) {
                m[p][c] /= pivot;
            }
            for (int r = 0; r < 3; r++) {
                double factor = m[r][p];
                for (int c = 0; c < 6 && r != p; c++) {
                    m[r][c] -= factor * m[p][c];
                }
            }
        }
        double turn = m[2][3] * right[0] + m[2][4] * right[1] + m[2][5] * right[2];
        return new double[] {turn, m[2][5]};
    }

    @ParameterizedTest
    @ValueSource(doubles = {4, 9, 12.5})
    void theTurnAndItsErrorAreThoseOfThreeUnknowns(double lateSeconds) {
        double began = BINS - lateSeconds;
        double[] values = values(began, 0.02, 0.01);
        WindowFit window = fit(values);
        window.findTurn(lateSeconds, BINS);
        double[] long3 = solvedAtLength(values, began);
        assertThat(window.turn()).isCloseTo(long3[0], within(1e-10));
        // The noise is that of the line, as the turn is looked for beside it.
        double variance = window.residualVariance() * (BINS - 2) / (BINS - 3);
        assertThat(window.turnError()).isCloseTo(Math.sqrt(variance * long3[1]), within(1e-10));
    }

    @Test
    void aTurnWithoutNoiseIsFoundExactly() {
        WindowFit window = fit(values(12, -0.03, 0));
        window.findTurn(8, BINS);
        assertThat(window.turn()).isCloseTo(-0.03, within(1e-12));
    }
}
