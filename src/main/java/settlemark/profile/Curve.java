package settlemark.profile;

import java.util.List;

/** From a raw number to a value in the channel's unit. */
public sealed interface Curve {
    /** The raw number itself. */
    Curve IDENTITY = new Linear(1, 0);

    /**
     * {@code raw * scale + offset}.
     *
     * @param scale not zero
     * @param offset in the channel's unit
     */
    record Linear(double scale, double offset) implements Curve {
        public Linear {
            if (!Double.isFinite(scale) || scale == 0 || !Double.isFinite(offset)) {
                throw new IllegalArgumentException("scale must be a number other than 0, got " + scale);
            }
        }
    }

    /**
     * {@code c0 + c1 raw + c2 raw^2 + ...}.
     *
     * @param coefficients 2 to 10, finite, lowest power first
     */
    record Polynomial(List<Double> coefficients) implements Curve {
        public Polynomial {
            coefficients = List.copyOf(coefficients);
            if (coefficients.size() < 2
                    || coefficients.size() > ProfileLimits.COEFFICIENTS
                    || coefficients.stream().anyMatch(c -> !Double.isFinite(c))) {
                throw new IllegalArgumentException("a polynomial has 2 to 10 finite coefficients");
            }
        }
    }

    /**
     * Straight lines between points. A raw number outside them is over or under range, by the value at that end.
     *
     * @param raws 2 to 1000, rising
     * @param values as many, rising or falling
     */
    record Table(List<Double> raws, List<Double> values) implements Curve {
        public Table {
            raws = List.copyOf(raws);
            values = List.copyOf(values);
            if (raws.size() < 2
                    || raws.size() > ProfileLimits.TABLE_POINTS
                    || raws.size() != values.size()
                    || !rises(raws, 1)) {
                throw new IllegalArgumentException("a table has 2 to 1000 points with rising raw numbers");
            }
            if (!rises(values, 1) && !rises(values, -1)) {
                throw new IllegalArgumentException("the values of a table rise or fall all the way");
            }
        }

        private static boolean rises(List<Double> numbers, int sign) {
            for (int i = 1; i < numbers.size(); i++) {
                if (!(sign * numbers.get(i) > sign * numbers.get(i - 1))) {
                    return false;
                }
            }
            return numbers.stream().allMatch(Double::isFinite);
        }
    }
}
