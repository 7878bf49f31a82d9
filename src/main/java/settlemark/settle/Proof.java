package settlemark.settle;

/**
 * The attempt to prove, on one window, that the remaining movement is bounded: an equivalence test on slope times horizon
 * (two one-sided tests, Schuirmann, J. Pharmacokin. Biopharm. 15, 1987), not a test that finds no slope.
 *
 * <p>Filled by {@link #attempt} once a bin; everything else reads it.
 */
final class Proof {
    private static final double MOVING_CAUTION_GAS = 2;
    private static final double NOISE_SIGMAS_IN_RANGE = 2.5;
    private static final double MOST_NOISE_OF_BAND = 0.4;
    private static final double REMAINING_SHARE_IN_VALUE = 0.35;
    private static final double REMAINING_SHARE_IN_UNCERTAINTY = 0.6;

    private final SettleSettings settings;
    private final StudentT studentT;
    private final WindowFit window;

    private double horizonSeconds;
    private double resolution;
    private double couldMove;
    private double surelyMoves;
    private double swing;

    Proof(SettleSettings settings, double windowSeconds, StudentT studentT, int capacity) {
        this.settings = settings;
        this.studentT = studentT;
        this.window = new WindowFit(windowSeconds, settings.binSeconds(), capacity);
    }

    WindowFit window() {
        return window;
    }

    /** Bounds the movement, after the window was fitted. */
    void attempt(double horizonToUseSeconds, double stepOfResolution, double sampleSigma) {
        if (!window.filled()) {
            return;
        }
        horizonSeconds = horizonToUseSeconds;
        resolution = stepOfResolution;
        double quantile = studentT.quantile(window.bins() - 2);
        double slope = Math.abs(window.slopePerSecond());
        couldMove = (slope + quantile * Math.sqrt(window.slopeVariance())) * horizonSeconds;
        double caution = settings.kind() == SettleKind.GAS ? MOVING_CAUTION_GAS : 1;
        surelyMoves = (slope - caution * quantile * Math.sqrt(window.noiseVariance())) * settings.horizonSeconds();
        double noise = Math.min(NOISE_SIGMAS_IN_RANGE * sampleSigma, MOST_NOISE_OF_BAND * settings.band());
        swing = Math.max(0, window.halfRange() - noise);
    }

    /** Remaining movement and swings are within the limits. */
    boolean holds() {
        return window.filled() && couldMove <= settings.driftLimit() && swing <= settings.band();
    }

    /** Upper bound on the remaining movement. */
    double couldMove() {
        return couldMove;
    }

    /** Lower bound on the movement within the whole horizon. */
    double surelyMoves() {
        return surelyMoves;
    }

    /** Half-width of the swings beyond noise. */
    double swing() {
        return swing;
    }

    /** What is expected to remain, without its uncertainty. */
    double expectedToMove() {
        return Math.abs(window.slopePerSecond()) * horizonSeconds;
    }

    /** How far the fitted line moved within the window. */
    double moved() {
        return Math.abs(window.slopePerSecond()) * window.spanSeconds();
    }

    /** The reading: the mean, carried along the slope as far as the slope is believed. */
    double value() {
        double toEnd = window.slopePerSecond() * (window.lastSeconds() - window.meanSeconds());
        if (settings.kind() == SettleKind.GAS) {
            return window.meanValue() + slopeBelief() * toEnd;
        }
        return window.meanValue() + toEnd + REMAINING_SHARE_IN_VALUE * window.slopePerSecond() * horizonSeconds;
    }

    /** Expanded uncertainty (about 95 %) of the reading: noise, rounding and what may still come. */
    double uncertainty() {
        double belief = settings.kind() == SettleKind.GAS ? slopeBelief() : 1;
        double meanVariance = Math.max(
                window.residualVariance() / window.bins() * (1 + 3 * belief),
                window.slopeVariance() * window.squaredSeconds() / window.bins());
        double remaining = REMAINING_SHARE_IN_UNCERTAINTY * couldMove;
        return Math.sqrt(4 * meanVariance + resolution * resolution / 4 + remaining * remaining);
    }

    private double slopeBelief() {
        double slope = window.slopePerSecond();
        return slope == 0 ? 0 : Math.max(0, 1 - window.slopeVariance() / (slope * slope));
    }
}
