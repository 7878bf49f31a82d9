package settlemark.settle;

/** How many samples a second arrive: an exponentially weighted mean of the reciprocal spacing. */
final class SampleRate {
    private static final double WEIGHT = 0.05;
    /** A burst that was buffered on the way would otherwise look like a very fast probe. */
    private static final double MOST_PER_SECOND = 50;

    /** So many pauses in a row, alike and too long, are no gaps: the probe is slow. */
    private static final int PAUSES_ALIKE = 3;

    private static final double ALIKE_SHARE = 0.2;

    private double perSecond = Double.NaN;
    private double longPauseSeconds = Double.NaN;
    private int alike;

    void spaced(double seconds) {
        alike = 0;
        double now = Math.min(1 / seconds, MOST_PER_SECOND);
        perSecond = Double.isNaN(perSecond) ? now : perSecond + WEIGHT * (now - perSecond);
    }

    /** A pause that is a gap; true where it is one of several alike, which then are how often samples come. */
    boolean slow(double seconds) {
        boolean same = alike > 0 && Math.abs(seconds - longPauseSeconds) <= ALIKE_SHARE * longPauseSeconds;
        alike = same ? alike + 1 : 1;
        longPauseSeconds = seconds;
        if (alike < PAUSES_ALIKE) {
            return false;
        }
        perSecond = 1 / seconds;
        alike = 0;
        return true;
    }

    /** Mean time between samples, NaN where it is not known. */
    double periodSeconds() {
        return 1 / perSecond;
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
