package settlemark.settle;

import java.util.Arrays;
import org.apache.commons.statistics.distribution.TDistribution;

/** One-sided Student t quantiles, each asked of the library once. */
final class StudentT {
    private final double confidence;
    private final double[] byDegrees;

    /** Holds degrees of freedom 1 to the maximum. */
    StudentT(double confidence, int maximumDegrees) {
        this.confidence = confidence;
        this.byDegrees = new double[maximumDegrees + 1];
        Arrays.fill(byDegrees, Double.NaN);
    }

    double quantile(int degrees) {
        double known = byDegrees[degrees];
        if (Double.isNaN(known)) {
            known = TDistribution.of(degrees).inverseCumulativeProbability(confidence);
            byDegrees[degrees] = known;
        }
        return known;
    }
}
