package settlemark.settle;

/**
 * A straight line through the bins of one window, with the uncertainty of its slope.
 *
 * <p>Least squares by two passes, which does not cancel. The variance of the slope is the greater of the ordinary one and the
 * one that allows for autocorrelated residuals (Newey and West, Econometrica 55, 1987, with Bartlett weights and n/4 lags),
 * never less than that of rounding, plus the slope that a reading stuck on one step could hide (a ramp of one step in the
 * window, uniform, so one step / sqrt 3).
 */
final class WindowFit {
    private static final int FEWEST_BINS = 6;
    private static final double FILLED_FRACTION = 0.8;
    private static final double HIDDEN_STEP = 0.577;
    private static final double DITHERING_SIGMA_STEPS = 0.3;

    private final double windowSeconds;
    private final double binSeconds;
    /** Room to work in, which the windows of a channel share. */
    record Room(double[] times, double[] values, double[] scores) {
        Room(int capacity) {
            this(new double[capacity], new double[capacity], new double[capacity]);
        }
    }

    private final double[] times;
    private final double[] values;
    private final double[] scores;

    private boolean filled;
    private int bins;
    private double firstSeconds;
    private double lastSeconds;
    private double startSeconds;
    private double meanSeconds;
    private double meanValue;
    private double squaredSeconds;
    private double cubedSeconds;
    private double fourthSeconds;
    private double products;
    private double bentResiduals;
    private double slope;
    private double residualVariance;
    private double noiseVariance;
    private double slopeVariance;
    private double halfRange;
    private double endSlope;
    private double bendSigmas;
    private double halfRangeOfMeans;
    private double turn;
    private double turnError;

    WindowFit(double windowSeconds, double binSeconds, Room room) {
        this.windowSeconds = windowSeconds;
        this.binSeconds = binSeconds;
        this.times = room.times;
        this.values = room.values;
        this.scores = room.scores;
    }

    /** Fits the bins that are in the window at the given time. */
    void fit(BinRing ring, double nowSeconds, double resolution) {
        int from = ring.firstAfter(nowSeconds - windowSeconds - binSeconds / 2 - SettleDetector.TIME_TOLERANCE_SECONDS);
        bins = ring.size() - from;
        filled = false;
        if (bins < FEWEST_BINS) {
            return;
        }
        firstSeconds = ring.meanSeconds(from);
        lastSeconds = ring.meanSeconds(ring.size() - 1);
        startSeconds = ring.firstSeconds(from);
        filled = spanSeconds() >= FILLED_FRACTION * windowSeconds - binSeconds - SettleDetector.TIME_TOLERANCE_SECONDS;
        if (filled) {
            fitLine(ring, from);
            slopeVariance = noiseVariance(resolution) + hiddenVariance(resolution);
            halfRange = ring.range(from) / 2;
            fitBend();
        }
    }

    void clear() {
        filled = false;
        bins = 0;
    }

    /** Times and values are kept from their means, which does not cancel. */
    private void fitLine(BinRing ring, int from) {
        ring.copy(from, times, values);
        double sumSeconds = 0;
        double sumValue = 0;
        double reference = values[0];
        for (int i = 0; i < bins; i++) {
            sumSeconds += times[i] - firstSeconds;
            sumValue += values[i] - reference;
        }
        meanSeconds = firstSeconds + sumSeconds / bins;
        meanValue = reference + sumValue / bins;
        addUpMoments();
        slope = products / squaredSeconds;
    }

    private void addUpMoments() {
        double squared = 0;
        double cubed = 0;
        double fourth = 0;
        double mixed = 0;
        double least = 0;
        double most = 0;
        for (int i = 0; i < bins; i++) {
            double time = times[i] - meanSeconds;
            double value = values[i] - meanValue;
            double square = time * time;
            times[i] = time;
            values[i] = value;
            squared += square;
            cubed += square * time;
            fourth += square * square;
            mixed += time * value;
            least = value < least ? value : least;
            most = value > most ? value : most;
        }
        squaredSeconds = squared;
        cubedSeconds = cubed;
        fourthSeconds = fourth;
        products = mixed;
        halfRangeOfMeans = (most - least) / 2;
    }

    private double noiseVariance(double resolution) {
        double squaredResiduals = 0;
        double bent = 0;
        for (int i = 0; i < bins; i++) {
            double residual = values[i] - slope * times[i];
            double score = times[i] * residual;
            squaredResiduals += residual * residual;
            bent += times[i] * score;
            scores[i] = score;
        }
        bentResiduals = bent;
        residualVariance = squaredResiduals / (bins - 2);
        double rounding = resolution * resolution / 48 / squaredSeconds;
        noiseVariance = Math.max(Math.max(residualVariance / squaredSeconds, correlatedVariance()), rounding);
        return noiseVariance;
    }

    /**
     * Newey and West's variance of the slope, from the scores of the last fit. Bartlett's weights are what the squares of all
     * sums of lags + 1 neighbours add up to, so one running sum gives it.
     */
    double correlatedVariance() {
        int neighbours = Math.max(1, bins / 4) + 1;
        double running = 0;
        double sum = 0;
        for (int i = 0; i < neighbours; i++) {
            running += scores[i];
            sum += running * running;
        }
        for (int i = neighbours; i < bins; i++) {
            running += scores[i] - scores[i - neighbours];
            sum += running * running;
        }
        for (int i = bins - neighbours; i < bins - 1; i++) {
            running -= scores[i];
            sum += running * running;
        }
        return sum / neighbours / (squaredSeconds * squaredSeconds) * bins / (bins - 2);
    }

    private double hiddenVariance(double resolution) {
        if (resolution <= 0) {
            return 0;
        }
        double undithered = Math.max(0, 1 - Math.sqrt(residualVariance) / (DITHERING_SIGMA_STEPS * resolution));
        double hidden = HIDDEN_STEP * resolution / spanSeconds();
        return undithered * hidden * hidden;
    }

    /**
     * Slope at the end and whether the line is clearly bent: a parabola through the same bins. Its part that is no line, t^2 -
     * the mean of t^2 - skew t, is square to the residuals but for t^2.
     */
    private void fitBend() {
        double skew = cubedSeconds / squaredSeconds;
        double norm = fourthSeconds - squaredSeconds * squaredSeconds / bins - cubedSeconds * skew;
        double bend = bentResiduals / norm;
        endSlope = slope + bend * (2 * (lastSeconds - meanSeconds) - skew);
        bendSigmas = Math.abs(bend)
                / Math.sqrt(Math.max(residualVariance * (bins - 2) - bend * bentResiduals, 1e-300) / (bins - 3) / norm);
    }

    /**
     * Looks for a ramp that began some seconds before a time, beside the line: the third unknown. It needs the bins of the
     * last fit, so it is asked before another window uses the room.
     */
    void findTurn(double beganSeconds, double nowSeconds) {
        double began = nowSeconds - beganSeconds - meanSeconds;
        double own = 0;
        double sum = 0;
        double timed = 0;
        double product = 0;
        for (int i = bins - 1; i >= 0 && times[i] > began; i--) {
            double late = times[i] - began;
            own += late * late;
            sum += late;
            timed += late * times[i];
            product += late * (values[i] - slope * times[i]);
        }
        own -= sum * sum / bins + timed * timed / squaredSeconds;
        turn = product / own;
        turnError = Math.sqrt(residualVariance * (bins - 2) / (bins - 3) / own);
    }

    /** Slope of the ramp last looked for. */
    double turn() {
        return turn;
    }

    /** Its standard error. */
    double turnError() {
        return turnError;
    }

    /** Whether enough of the window holds data; the figures below have a meaning only then. */
    boolean filled() {
        return filled;
    }

    double windowSeconds() {
        return windowSeconds;
    }

    /** Seconds that a window needs before it counts as filled. */
    double neededSeconds() {
        return FILLED_FRACTION * windowSeconds;
    }

    int bins() {
        return bins;
    }

    double spanSeconds() {
        return lastSeconds - firstSeconds;
    }

    double firstSeconds() {
        return firstSeconds;
    }

    double lastSeconds() {
        return lastSeconds;
    }

    /** Time of the first sample in the window. */
    double startSeconds() {
        return startSeconds;
    }

    double meanSeconds() {
        return meanSeconds;
    }

    double meanValue() {
        return meanValue;
    }

    /** Sum of squared distances of the bins' times from their mean. */
    double squaredSeconds() {
        return squaredSeconds;
    }

    double slopePerSecond() {
        return slope;
    }

    double endSlope() {
        return endSlope;
    }

    double bendSigmas() {
        return bendSigmas;
    }

    double residualVariance() {
        return residualVariance;
    }

    /** Variance of the slope from noise and rounding alone. */
    double noiseVariance() {
        return noiseVariance;
    }

    /** Variance of the slope, with what a reading stuck on one step could hide. */
    double slopeVariance() {
        return slopeVariance;
    }

    /** Half the range of the raw samples. */
    double halfRange() {
        return halfRange;
    }

    double halfRangeOfMeans() {
        return halfRangeOfMeans;
    }
}
