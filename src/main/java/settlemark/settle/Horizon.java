package settlemark.settle;

/**
 * How far ahead the slope has to be extended. Without a known time constant that is the whole horizon; where an approach
 * shows its time constant, what remains is less.
 *
 * <p>On an exponential approach the slope of a window falls in proportion to its mean: the pairs (mean, slope) of the
 * shortest window lie on a line whose steepness is -1/kappa (see {@link Approach}). The line is fitted with forgetting, so
 * that a new approach replaces an old one. A time constant is used only while three things hold, because a ramp that never
 * ends has none: the steepness is proved (its upper confidence bound still falls within the horizon), the present slope lies
 * on the line, and the evidence is recent.
 */
final class Horizon {
    private static final double CLEAR_SLOPE_SIGMAS = 6;
    private static final double SPREAD_OF_LIMIT_SQUARED = 0.32;
    private static final double SHORTEST_TAU_SECONDS = 5;
    /** A slower second mode often hides behind the one that is seen. */
    private static final double SLOWER_MODE = 1.7;

    private static final double OFF_THE_LINE_SIGMAS = 3;
    /** One-sided 95 % of the normal distribution. */
    private static final double PROOF_SIGMAS = 1.645;

    private final SettleSettings settings;
    private final double shortestWindowSeconds;
    private final double overlap;
    private double reference;
    private double weight;
    private double sumX;
    private double sumY;
    private double sumXx;
    private double sumXy;
    private double tauSeconds = Double.NaN;
    private double learntAtSeconds;

    Horizon(SettleSettings settings) {
        this.settings = settings;
        this.shortestWindowSeconds = settings.windowSeconds().get(0);
        // Windows that begin one bin apart share most of their noise.
        this.overlap = shortestWindowSeconds / settings.binSeconds();
    }

    void forget() {
        weight = 0;
        sumX = 0;
        sumY = 0;
        sumXx = 0;
        sumXy = 0;
        tauSeconds = Double.NaN;
    }

    /** Seconds by which a slope over the given window is extended. */
    double seconds(double windowSeconds) {
        return Double.isNaN(tauSeconds) ? settings.horizonSeconds() : Approach.rhoSeconds(tauSeconds, windowSeconds);
    }

    /** Learns from the shortest window, once a bin. */
    void learn(WindowFit window, double nowSeconds) {
        if (!settings.learnTimeConstant()) {
            return;
        }
        if (window.filled()) {
            double sigma = Math.sqrt(window.noiseVariance());
            boolean onTheLine = Math.abs(distanceFromLine(window)) <= OFF_THE_LINE_SIGMAS * sigma;
            if (Math.abs(window.slopePerSecond()) > CLEAR_SLOPE_SIGMAS * sigma) {
                if (weight == 0) {
                    reference = window.meanValue();
                    learntAtSeconds = nowSeconds;
                }
                add(window);
                estimate(nowSeconds);
            }
            if (!onTheLine) {
                tauSeconds = Double.NaN;
            }
        }
        double longest = Double.isNaN(tauSeconds) ? settings.horizonSeconds() : tauSeconds;
        if (weight > 0 && nowSeconds - learntAtSeconds > longest + shortestWindowSeconds) {
            forget();
        }
    }

    /** How far the slope lies from what the line says for the window's mean; 0 while there is no line. */
    private double distanceFromLine(WindowFit window) {
        double spread = spread();
        if (!(spread > 0)) {
            return 0;
        }
        double x = window.meanValue() - reference;
        double expected = (sumY + covariance() / spread * (x * weight - sumX)) / weight;
        return window.slopePerSecond() - expected;
    }

    private void add(WindowFit window) {
        double keep = Math.exp(-settings.binSeconds() / shortestWindowSeconds);
        double w = 1 / Math.max(window.noiseVariance(), Double.MIN_NORMAL);
        double x = window.meanValue() - reference;
        double y = window.slopePerSecond();
        weight = weight * keep + w;
        sumX = sumX * keep + w * x;
        sumY = sumY * keep + w * y;
        sumXx = sumXx * keep + w * x * x;
        sumXy = sumXy * keep + w * x * y;
    }

    private void estimate(double nowSeconds) {
        double spread = spread();
        double limit = settings.driftLimit();
        if (!(spread > SPREAD_OF_LIMIT_SQUARED * limit * limit * weight) || covariance() >= 0) {
            return;
        }
        double steepness = covariance() / spread;
        double boundOfSteepness = steepness + PROOF_SIGMAS * Math.sqrt(overlap / spread);
        double longest = settings.horizonSeconds();
        learntAtSeconds = nowSeconds;
        if (boundOfSteepness >= -1 / Approach.kappaSeconds(longest, shortestWindowSeconds)) {
            tauSeconds = Double.NaN;
            return;
        }
        double likely = SLOWER_MODE * tauSeconds(steepness);
        tauSeconds = Math.min(longest, Math.max(likely, tauSeconds(boundOfSteepness)));
    }

    private double tauSeconds(double steepness) {
        return Approach.tauSeconds(
                -1 / steepness, shortestWindowSeconds, SHORTEST_TAU_SECONDS, settings.horizonSeconds());
    }

    private double spread() {
        return weight > 0 ? sumXx - sumX * sumX / weight : 0;
    }

    private double covariance() {
        return sumXy - sumX * sumY / weight;
    }
}
