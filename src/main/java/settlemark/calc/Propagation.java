package settlemark.calc;

import java.util.function.ToDoubleFunction;

/**
 * Uncertainties through a function of uncorrelated inputs.
 *
 * <p>First order: {@code u^2 = sum (df/dx_i u_i)^2} (JCGM 100:2008, 5.1.2). Whether that is enough is judged by the
 * function's own values at sqrt(3) standard deviations to both sides, the three-point Gauss-Hermite rule, which is exact
 * for a quintic in one normal input, and by the mixed second differences.
 */
final class Propagation {
    private static final double STEP = 1e-4;
    private static final double LINEAR_WITHIN = 0.01;

    private final ToDoubleFunction<double[]> function;
    private final double[] x;
    private final double[] u;
    private final double[] sensitivities;

    Propagation(ToDoubleFunction<double[]> function, double[] x, double[] u) {
        this.function = function;
        this.x = x.clone();
        this.u = u.clone();
        this.sensitivities = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            sensitivities[i] = u[i] == 0 ? 0 : derivative(i);
        }
    }

    double sensitivity(int i) {
        return sensitivities[i];
    }

    double contribution(int i) {
        return Math.abs(sensitivities[i]) * u[i];
    }

    double firstOrder() {
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            sum += contribution(i) * contribution(i);
        }
        return Math.sqrt(sum);
    }

    boolean isLinear() {
        double first = firstOrder();
        double wide = wide();
        return first == 0 ? wide == 0 : Math.abs(wide - first) <= LINEAR_WITHIN * first;
    }

    private double derivative(int i) {
        double step = STEP * Math.min(u[i], Math.max(Math.abs(x[i]), u[i]));
        return (at(i, step) - at(i, -step)) / (2 * step);
    }

    /** Standard deviation with what first order leaves out; NaN where the function ends within the spread. */
    private double wide() {
        double centre = function.applyAsDouble(x);
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            if (u[i] > 0) {
                double reach = Math.sqrt(3) * u[i];
                double above = at(i, reach) - centre;
                double below = at(i, -reach) - centre;
                double mean = (above + below) / 6;
                sum += (above * above + below * below) / 6 - mean * mean;
            }
            for (int j = 0; j < i; j++) {
                double mixed = mixed(i, j);
                sum += mixed * mixed;
            }
        }
        return Math.sqrt(sum);
    }

    private double mixed(int i, int j) {
        if (u[i] == 0 || u[j] == 0) {
            return 0;
        }
        return (at(i, u[i], j, u[j]) - at(i, u[i], j, -u[j]) - at(i, -u[i], j, u[j]) + at(i, -u[i], j, -u[j])) / 4;
    }

    private double at(int i, double change) {
        double[] moved = x.clone();
        moved[i] += change;
        return function.applyAsDouble(moved);
    }

    private double at(int i, double change, int j, double other) {
        double[] moved = x.clone();
        moved[i] += change;
        moved[j] += other;
        return function.applyAsDouble(moved);
    }
}
