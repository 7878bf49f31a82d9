package settlemark.settle;

import java.util.Arrays;

/**
 * An exponential approach on top of a steady ramp, x = c + r t + a exp(-t/tau), through the bins of the present segment:
 * where the reading is heading, and what it could still move whether it ends there or goes on.
 *
 * <p>The ramp is always in the model, so a ramp that begins as an approach fades is never taken for its end; the price is a
 * proof a little later. Gauss and Newton's method, from the time constant of the bin before. The variances come from the
 * linearised least squares, widened by the first autocorrelation of the residuals and never below that of rounding. Longer
 * than most files, because the steps, the residuals and the variances share one set of sums.
 */
final class ApproachFit {
    private static final int UNKNOWNS = CurveEquations.UNKNOWNS;
    private static final int MOST_ITERATIONS = 4;
    private static final int FEWEST_BINS = 12;
    private static final double SHORTEST_TAU_SECONDS = 4;
    private static final double LARGEST_STEP = 0.5;
    private static final double CLOSE_ENOUGH = 0.02;
    private static final double TAUS_LOOKED_BACK = 6;
    private static final int LAST_BINS = 4;
    private static final double END_SIGMAS = 3;
    private static final double[] FIRST_TAUS_SECONDS = {8, 16, 32, 64, 128};

    private static final double SMALL_EXPONENT = 0.1;

    private final double horizonSeconds;
    private final double binSeconds;
    // Room that the lines use as well: it holds only while a fit goes on.
    private final double[] times;
    private final double[] values;
    private final double[] decays;
    private final double[] residuals;
    private double firstTime;
    private final CurveEquations equations = new CurveEquations();
    private final double[] work = new double[UNKNOWNS];
    private int bins;
    private double origin;
    private double tauSeconds = Double.NaN;
    private double squares;
    private double variance;
    private boolean found;
    private final double[] whiteLevel = new double[UNKNOWNS];
    private final double[] whiteRamp = new double[UNKNOWNS];
    private final double[] whiteApproach = new double[UNKNOWNS];
    private double expectedEnd;
    private double expectedEndVariance;
    private double expectedLeft;
    private double turn;
    private double turnError;

    ApproachFit(SettleSettings settings, WindowFit.Room room) {
        horizonSeconds = settings.horizonSeconds();
        binSeconds = settings.binSeconds();
        times = room.times();
        values = room.values();
        decays = room.scores();
        residuals = new double[settings.learnTimeConstant() ? times.length : 0];
    }

    void clear() {
        found = false;
        tauSeconds = Double.NaN;
    }

    /** Fits the bins so far; cheap where the approach goes on as it did a bin before. */
    void fit(BinRing ring, double nowSeconds, double resolution) {
        found = false;
        if (ring.size() < FEWEST_BINS) {
            return;
        }
        if (Double.isNaN(tauSeconds)) {
            tauSeconds = bestOfFirst(ring, nowSeconds);
        }
        for (int i = 0; i < MOST_ITERATIONS; i++) {
            take(ring, nowSeconds);
            if (bins < FEWEST_BINS || !solve() || !equations.solveWithTau()) {
                tauSeconds = Double.NaN;
                return;
            }
            double step = Math.max(-LARGEST_STEP, Math.min(LARGEST_STEP, equations.tauStep()));
            tauSeconds *= Math.exp(step);
            if (!(tauSeconds >= SHORTEST_TAU_SECONDS && tauSeconds <= horizonSeconds)) {
                tauSeconds = Double.NaN;
                return;
            }
            if (Math.abs(step) < CLOSE_ENOUGH) {
                found = true;
                weigh(resolution);
                return;
            }
        }
    }

    private double bestOfFirst(BinRing ring, double nowSeconds) {
        double best = Double.NaN;
        double least = Double.POSITIVE_INFINITY;
        for (double tau : FIRST_TAUS_SECONDS) {
            tauSeconds = tau;
            if (tau > horizonSeconds) {
                break;
            }
            take(ring, nowSeconds);
            if (bins >= FEWEST_BINS && solve()) {
                double each = leave(0) / (bins - 3);
                if (each < least) {
                    least = each;
                    best = tau;
                }
            }
        }
        return Double.isNaN(best) ? horizonSeconds / 2 : best;
    }

    /** What is older than some time constants says nothing about the end. */
    private void take(BinRing ring, double nowSeconds) {
        int from = ring.firstAfter(nowSeconds - Math.max(60, TAUS_LOOKED_BACK * tauSeconds));
        bins = ring.size() - from;
        origin = ring.meanValue(ring.size() - 1);
        ring.copy(from, times, values);
        for (int i = 0; i < bins; i++) {
            times[i] -= nowSeconds;
            values[i] -= origin;
        }
        firstTime = bins > 0 ? times[0] : 0;
        decay();
    }

    private boolean solve() {
        return equations.solve(times, values, decays, bins, horizonSeconds, tauSeconds);
    }

    /** Bins lie one width apart but for a little, so each decay is the next one's times a constant and nearly one. */
    private void decay() {
        double perTau = 1 / tauSeconds;
        double whole = Math.exp(binSeconds * perTau);
        double next = bins > 0 ? Math.exp(-times[bins - 1] * perTau) : 1;
        for (int i = bins - 1; i >= 0; i--) {
            double off = i == bins - 1 ? Double.NaN : (times[i + 1] - times[i] - binSeconds) * perTau;
            next = Math.abs(off) < SMALL_EXPONENT
                    ? next * whole * exponentialOfSmall(off)
                    : Math.exp(-times[i] * perTau);
            decays[i] = next;
        }
    }

    /** The exponential's series, to 3e-15 below {@value #SMALL_EXPONENT}. */
    static double exponentialOfSmall(double x) {
        double sum = 1 + x / 8;
        sum = 1 + x * sum * (1.0 / 7);
        sum = 1 + x * sum * (1.0 / 6);
        sum = 1 + x * sum * (1.0 / 5);
        sum = 1 + x * sum * (1.0 / 4);
        sum = 1 + x * sum * (1.0 / 3);
        sum = 1 + x * sum * (1.0 / 2);
        return 1 + x * sum;
    }

    /**
     * What the last curve leaves of each bin; the sum of their squares.
     *
     * @param tauStep the part of the time constant's last step that still counts
     */
    private double leave(double tauStep) {
        double level = equations.level();
        double ramp = equations.ramp() / horizonSeconds;
        double amplitude = equations.amplitude();
        double lasting = tauStep / tauSeconds;
        double sum = 0;
        for (int i = 0; i < bins; i++) {
            double approach = amplitude * decays[i] * (1 + lasting * times[i]);
            double residual = values[i] - level - ramp * times[i] - approach;
            residuals[i] = residual;
            sum += residual * residual;
        }
        return sum;
    }

    private void weigh(double resolution) {
        double lagged = 0;
        // The last step counts twice, in the time constant and in the sum: that widens the variance by what the curve
        // is
        // not yet sure of. Counted once, ramps after an approach are declared about twice as often.
        decay();
        squares = leave(equations.tauStep());
        for (int i = 1; i < bins; i++) {
            lagged += residuals[i] * residuals[i - 1];
        }
        double correlation = squares > 0 ? Math.max(0, Math.min(0.8, lagged / squares + 1.0 / bins)) : 0;
        variance = Math.max(squares / (bins - UNKNOWNS), resolution * resolution / 12)
                * (1 + correlation)
                / (1 - correlation);
    }

    /**
     * A ramp that began some seconds ago beside the curve, in movement within the horizon: the fifth unknown, at the curve
     * found.
     */
    void turn(double beganSeconds) {
        double perHorizon = 1 / horizonSeconds;
        double ofTau = equations.amplitude() / tauSeconds;
        double own = 0;
        double product = 0;
        Arrays.fill(work, 0);
        for (int i = bins - 1; i >= 0 && times[i] > -beganSeconds; i--) {
            double late = (times[i] + beganSeconds) * perHorizon;
            own += late * late;
            product += late * residuals[i];
            work[0] += late;
            work[1] += late * times[i] * perHorizon;
            work[2] += late * decays[i];
            work[3] += late * decays[i] * times[i] * ofTau;
        }
        equations.whiten(work);
        own -= sumOfProducts(work, work);
        turn = product / own;
        turnError = Math.sqrt(variance / own);
    }

    double turn() {
        return turn;
    }

    double turnError() {
        return turnError;
    }

    /** Standard error of a weighted sum of c, r times the horizon, and a. */
    private double standardError(double ofLevel, double ofRamp, double ofApproach) {
        whiten(work, ofLevel, ofRamp, ofApproach);
        return Math.sqrt(covariance(work, work));
    }

    /** Solves the factor of the normal equations for the weights of a sum. */
    private void whiten(double[] into, double ofLevel, double ofRamp, double ofApproach) {
        into[0] = ofLevel;
        into[1] = ofRamp;
        into[2] = ofApproach;
        into[3] = 0;
        equations.whiten(into);
    }

    /**
     * Works out the end and what is left, where a ramp beside the approach is not expected to be steeper than usual: Bayes'
     * rule with a normal prior on the ramp. Without it an early curve can be a ramp as well as an approach.
     */
    void expect(double usualRamp) {
        whiten(whiteLevel, 1, 0, 0);
        whiten(whiteRamp, 0, 1, 0);
        whiten(whiteApproach, 0, 0, 1);
        double wide = covariance(whiteRamp, whiteRamp) + usualRamp * usualRamp;
        double levelAndRamp = covariance(whiteLevel, whiteRamp);
        expectedEnd = origin + equations.level() - levelAndRamp / wide * equations.ramp();
        expectedEndVariance = covariance(whiteLevel, whiteLevel) - levelAndRamp * levelAndRamp / wide;
        expectedLeft = -equations.amplitude() + covariance(whiteApproach, whiteRamp) / wide * equations.ramp();
    }

    double expectedEnd() {
        return expectedEnd;
    }

    double expectedEndVariance() {
        return expectedEndVariance;
    }

    /** With its sign. */
    double expectedLeft() {
        return expectedLeft;
    }

    private double covariance(double[] one, double[] other) {
        return sumOfProducts(one, other) * variance;
    }

    private static double sumOfProducts(double[] one, double[] other) {
        double sum = 0;
        for (int j = 0; j < UNKNOWNS; j++) {
            sum += one[j] * other[j];
        }
        return sum;
    }

    int degreesOfFreedom() {
        return bins - UNKNOWNS;
    }

    double spanSeconds() {
        return -firstTime;
    }

    /** Movement of the curve over the bins. */
    double movement() {
        double first = equations.level()
                + equations.ramp() * firstTime / horizonSeconds
                + equations.amplitude() * Math.exp(-firstTime / tauSeconds);
        return equations.level() + equations.amplitude() - first;
    }

    double residualVariance() {
        return squares / (bins - UNKNOWNS);
    }

    /** Whether the last bins lie on the curve: where something new began, they leave it first. */
    boolean endsOnTheCurve() {
        double sum = 0;
        for (int i = bins - LAST_BINS; i < bins; i++) {
            sum += residuals[i];
        }
        return Math.abs(sum / LAST_BINS) <= END_SIGMAS * Math.sqrt(variance / LAST_BINS);
    }

    /** Half the range of the samples about the curve, since a time. */
    double halfRange(BinRing ring, double sinceSeconds) {
        double least = 0;
        double most = 0;
        int from = ring.size() - bins;
        for (int i = bins - 1; i >= 0 && ring.meanSeconds(from + i) > sinceSeconds; i--) {
            double curve = ring.meanValue(from + i) - residuals[i];
            least = Math.min(least, ring.leastValue(from + i) - curve);
            most = Math.max(most, ring.mostValue(from + i) - curve);
        }
        return (most - least) / 2;
    }

    boolean found() {
        return found;
    }

    int bins() {
        return bins;
    }

    double tauSeconds() {
        return tauSeconds;
    }

    /** What the approach has left, with its sign. */
    double left() {
        return -equations.amplitude();
    }

    double ramp() {
        return equations.ramp();
    }

    double rampError() {
        return standardError(0, 1, 0);
    }

    double end() {
        return origin + equations.level();
    }

    double endError() {
        return standardError(1, 0, 0);
    }

    double now() {
        return origin + equations.level() + equations.amplitude();
    }

    double nowError() {
        return standardError(1, 0, 1);
    }

    /** Upper bound on the movement, be it the approach's end, the ramp's, or both. */
    double couldMove(double quantile) {
        double approach = Math.abs(equations.amplitude()) + quantile * standardError(0, 0, 1);
        double ramp = Math.abs(equations.ramp()) + quantile * standardError(0, 1, 0);
        double both = Math.abs(equations.ramp() - equations.amplitude()) + quantile * standardError(0, 1, -1);
        return Math.max(approach, Math.max(ramp, both));
    }
}
