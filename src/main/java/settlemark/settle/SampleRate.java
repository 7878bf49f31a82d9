package settlemark.settle;

/** How many samples a second arrive: an exponentially weighted mean of the reciprocal spacing. */
final class SampleRate {
    private static final double WEIGHT = 0.05;
    /** A burst that was buffered on the way would otherwise look like a very fast probe. */
    private static final double MOST_PER_SECOND = 50;

    private double perSecond = Double.NaN;

    void spaced(double seconds) {
        double now = Math.min(1 / seconds, MOST_PER_SECOND);
        perSecond = Double.isNaN(perSecond) ? now : perSecond + WEIGHT * (now - perSecond);
    }

    /** Whether there were two samples to know it from. */
    boolean known() {
        return !Double.isNaN(perSecond);
    }

    /** The longest pause that is not yet a gap, in seconds. */
    double longestPause(double gapSeconds) {
        return Double.isNaN(perSecond) ? gapSeconds : Math.max(gapSeconds, 4 / perSecond);
    }

    /** How many samples in a row prove a change: about a second's worth, 2 to 5. */
    int samplesForChange() {
        return Double.isNaN(perSecond) ? 2 : (int) Math.max(2, Math.min(SpikeGate.MOST_PENDING, Math.rint(perSecond)));
    }
}
