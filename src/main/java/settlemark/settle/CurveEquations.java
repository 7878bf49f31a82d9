package settlemark.settle;

import java.util.Arrays;

/**
 * The normal equations of an approach's curve, x = c + r t/H + a g + d h with g = exp(-t/tau) and h = a g t/tau, by
 * Cholesky's factor.
 *
 * <p>One pass over the bins makes the sums of both steps: first c, r and a alone, then with that a the step d of the time
 * constant too.
 */
final class CurveEquations {
    static final int UNKNOWNS = 4;
    private static final int WITHOUT_TAU = 3;
    private static final double LEAST_PIVOT = 1e-10;

    private final double[][] factor = new double[UNKNOWNS][UNKNOWNS];
    private final double[] right = new double[UNKNOWNS];
    private final double[] solution = new double[UNKNOWNS];

    /** Solves for c, r and a; false where they cannot be told apart. */
    boolean solve(
            double[] times, double[] values, double[] decays, int bins, double horizonSeconds, double tauSeconds) {
        addUp(times, values, decays, bins, 1 / horizonSeconds, 1 / tauSeconds);
        for (int i = 0; i < WITHOUT_TAU; i++) {
            if (!factorise(i)) {
                Arrays.fill(solution, 0);
                return false;
            }
        }
        substitute(WITHOUT_TAU);
        return true;
    }

    /** Solves the same sums for all four, about the a of {@link #solve}. */
    boolean solveWithTau() {
        double amplitude = solution[2];
        right[3] *= amplitude;
        for (int k = 0; k < WITHOUT_TAU; k++) {
            factor[3][k] *= amplitude;
        }
        factor[3][3] *= amplitude * amplitude;
        if (!factorise(3)) {
            return false;
        }
        substitute(UNKNOWNS);
        return true;
    }

    /** The time constant's sums are of g t/tau, without the a that is not yet known. */
    private void addUp(double[] times, double[] values, double[] decays, int bins, double perHorizon, double perTau) {
        double t1 = 0;
        double tt = 0;
        double g1 = 0;
        double gt = 0;
        double gg = 0;
        double h1 = 0;
        double ht = 0;
        double hg = 0;
        double hh = 0;
        double x1 = 0;
        double xt = 0;
        double xg = 0;
        double xh = 0;
        for (int i = 0; i < bins; i++) {
            double x = values[i];
            double t = times[i] * perHorizon;
            double g = decays[i];
            double h = g * times[i] * perTau;
            x1 += x;
            xt += x * t;
            xg += x * g;
            xh += x * h;
            t1 += t;
            tt += t * t;
            g1 += g;
            gt += g * t;
            gg += g * g;
            h1 += h;
            ht += h * t;
            hg += h * g;
            hh += h * h;
        }
        put(0, bins, 0, 0, 0, x1);
        put(1, t1, tt, 0, 0, xt);
        put(2, g1, gt, gg, 0, xg);
        put(3, h1, ht, hg, hh, xh);
    }

    private void put(int row, double first, double second, double third, double fourth, double ofValues) {
        double[] sums = factor[row];
        sums[0] = first;
        sums[1] = second;
        sums[2] = third;
        sums[3] = fourth;
        right[row] = ofValues;
    }

    private boolean factorise(int row) {
        double[] sums = factor[row];
        double before = sums[row];
        for (int k = 0; k <= row; k++) {
            double sum = sums[k];
            for (int l = 0; l < k; l++) {
                sum -= sums[l] * factor[k][l];
            }
            if (k < row) {
                sums[k] = sum / factor[k][k];
            } else if (sum > LEAST_PIVOT * before) {
                sums[row] = Math.sqrt(sum);
            } else {
                return false;
            }
        }
        return true;
    }

    private void substitute(int unknowns) {
        for (int j = 0; j < unknowns; j++) {
            double sum = right[j];
            for (int k = 0; k < j; k++) {
                sum -= factor[j][k] * solution[k];
            }
            solution[j] = sum / factor[j][j];
        }
        for (int j = unknowns - 1; j >= 0; j--) {
            double sum = solution[j];
            for (int k = j + 1; k < unknowns; k++) {
                sum -= factor[k][j] * solution[k];
            }
            solution[j] = sum / factor[j][j];
        }
    }

    /** Solves the factor itself for the weights of a sum of unknowns, in place. */
    void whiten(double[] weights) {
        for (int j = 0; j < UNKNOWNS; j++) {
            for (int k = 0; k < j; k++) {
                weights[j] -= factor[j][k] * weights[k];
            }
            weights[j] /= factor[j][j];
        }
    }

    double level() {
        return solution[0];
    }

    double ramp() {
        return solution[1];
    }

    double amplitude() {
        return solution[2];
    }

    double tauStep() {
        return solution[3];
    }
}
