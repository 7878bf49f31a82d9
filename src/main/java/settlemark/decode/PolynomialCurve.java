package settlemark.decode;

import settlemark.profile.Curve;

/** A polynomial, by Horner's rule. */
final class PolynomialCurve implements BentCurve {
    /** No wire carries raw numbers that are larger. */
    private static final double FARTHEST = 1e40;

    private static final double GROWTH = 1.25;

    private final double[] coefficients;

    PolynomialCurve(Curve.Polynomial polynomial) {
        coefficients = polynomial.coefficients().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
    }

    @Override
    public double apply(double raw) {
        double value = 0;
        for (int i = coefficients.length - 1; i >= 0; i--) {
            value = value * raw + coefficients[i];
        }
        return value;
    }

    @Override
    public boolean reaches(double value) {
        return true;
    }

    /** Looks for a change of sign in growing steps away from the hint, then halves the interval. */
    @Override
    public double inverse(double value, double hint) {
        if (apply(hint) == value) {
            return hint;
        }
        double best = hint;
        double low = hint;
        double high = hint;
        for (double step = 1; step < FARTHEST; step *= GROWTH) {
            if (changesSign(high, high + step, value)) {
                return halved(high, high + step, value);
            }
            if (changesSign(low - step, low, value)) {
                return halved(low - step, low, value);
            }
            high += step;
            low -= step;
            best = nearer(nearer(best, high, value), low, value);
        }
        return best;
    }

    private boolean changesSign(double from, double to, double value) {
        double first = apply(from) - value;
        double last = apply(to) - value;
        return first <= 0 && last >= 0 || first >= 0 && last <= 0;
    }

    private double nearer(double one, double other, double value) {
        return Math.abs(apply(other) - value) < Math.abs(apply(one) - value) ? other : one;
    }

    private double halved(double from, double to, double value) {
        double low = from;
        double high = to;
        double middle = low + (high - low) / 2;
        while (middle > low && middle < high) {
            if (changesSign(low, middle, value)) {
                high = middle;
            } else {
                low = middle;
            }
            middle = low + (high - low) / 2;
        }
        return nearer(low, high, value);
    }
}
