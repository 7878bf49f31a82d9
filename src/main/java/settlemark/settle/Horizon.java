package settlemark.settle;

/**
 * How far ahead the slope has to be extended. Without a known time constant that is the whole horizon; where an approach
 * shows its time constant, what remains is less.
 *
 * <p>The time constant is learnt from how the slope of the shortest window falls while its mean rises: weighted sums with
 * forgetting, so a new approach replaces an old one. What was learnt expires, so that a ramp that never ends is judged by
 * the whole horizon again.
 */
final class Horizon {
    private static final double CLEAR_SLOPE_SIGMAS = 6;
    private static final double SPREAD_OF_LIMIT_SQUARED = 0.32;
    private static final double SHORTEST_TAU_SECONDS = 5;
    /** A slower second mode often hides behind the one that is seen. */
    private static final double SLOWER_MODE = 1.7;

    private final SettleSettings settings;
    private final double shortestWindowSeconds;
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
    }

    void forget() {
        weight = 0;
        sumX = 0;
        sumY = 0;
        sumXx = 0;
        sumXy = 0;
        tauSeconds = Double.NaN;
    }

    /** The cautious time constant in use, NaN where none is known. */
    double tauSeconds() {
        return tauSeconds;
    }

    /** Seconds by which a slope over the given window is extended. */
    double seconds(double windowSeconds) {
        return Double.isNaN(tauSeconds) ? settings.horizonSeconds() : Approach.rhoSeconds(tauSeconds, windowSeconds);
    }

    /** Learns from the shortest window, once a bin. */
    void learn(WindowTest window, double nowSeconds) {
        if (!settings.learnTimeConstant()) {
            return;
        }
        boolean clear = window.filled()
                && Math.abs(window.slopePerSecond()) > CLEAR_SLOPE_SIGMAS * Math.sqrt(window.noiseVariance());
        if (clear) {
            add(window);
            estimate(nowSeconds);
        }
        if (!Double.isNaN(tauSeconds) && nowSeconds - learntAtSeconds > tauSeconds + shortestWindowSeconds) {
            forget();
        }
    }

    private void add(WindowTest window) {
        double keep = Math.exp(-settings.binSeconds() / shortestWindowSeconds);
        if (weight == 0) {
            reference = window.meanValue();
        }
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
        double spread = sumXx - sumX * sumX / weight;
        double covariance = sumXy - sumX * sumY / weight;
        double limit = settings.driftLimit();
        if (spread > SPREAD_OF_LIMIT_SQUARED * limit * limit * weight && covariance < 0) {
            double longest = settings.horizonSeconds();
            double tau =
                    Approach.tauSeconds(-spread / covariance, shortestWindowSeconds, SHORTEST_TAU_SECONDS, longest);
            tauSeconds = Math.min(longest, SLOWER_MODE * tau);
            learntAtSeconds = nowSeconds;
        }
    }
}
