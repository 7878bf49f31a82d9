package settlemark.settle;

import java.util.Arrays;

/**
 * Tells single spikes from real changes, and knows the noise of single samples.
 *
 * <p>A sample far from the median of the last five waits. When enough wait on the same side, the reading has changed; when
 * an ordinary sample follows first, the waiting ones were a spike. The noise is the mean absolute successive difference
 * times sqrt(pi)/2 (its expectation for normal noise, divided by sqrt 2 twice), and never below the noise of rounding.
 */
final class SpikeGate {
    static final int MOST_PENDING = 5;

    enum Verdict {
        ORDINARY,
        WAITING,
        CHANGED
    }

    private static final int MEMORY = 5;
    private static final double SIGMA_FROM_DIFFERENCE = 0.886;
    private static final double SIGMA_WEIGHT = 0.06;
    private static final double FAR_SIGMAS = 6;
    private static final double FAR_STEPS = 2.5;
    private static final double STEPS_PER_SIGMA = 3.46;

    private final double driftLimit;
    private final double[] recent = new double[MEMORY];
    private final double[] sorted = new double[MEMORY];
    private int recentCount;
    private int recentNext;
    private double last = Double.NaN;
    private double sigma;

    private final double[] pendingSeconds = new double[MOST_PENDING];
    private final double[] pendingValue = new double[MOST_PENDING];
    private int pendingCount;
    private double changedBy;

    SpikeGate(double driftLimit) {
        this.driftLimit = driftLimit;
    }

    /** Judges one sample. After {@code CHANGED} the caller takes the pending ones and calls {@link #restart}. */
    Verdict judge(double seconds, double value, double resolution, SampleRate rate) {
        sigma = Math.max(sigma, resolution / STEPS_PER_SIGMA);
        double away = recentCount == 0 ? 0 : value - median();
        if (Math.abs(away) <= Math.max(FAR_SIGMAS * sigma, Math.max(FAR_STEPS * resolution, driftLimit))) {
            pendingCount = 0;
            remember(value, resolution);
            return Verdict.ORDINARY;
        }
        if (pendingCount > 0 && away > 0 != changedBy > 0) {
            pendingCount = 0;
        }
        pendingSeconds[pendingCount] = seconds;
        pendingValue[pendingCount] = value;
        pendingCount++;
        changedBy = away;
        return pendingCount >= rate.samplesForChange() ? Verdict.CHANGED : Verdict.WAITING;
    }

    /** Starts from the pending samples, as the first of a new segment. The noise of the probe stays known. */
    void restart(double resolution) {
        recentCount = 0;
        recentNext = 0;
        last = Double.NaN;
        for (int i = 0; i < pendingCount; i++) {
            remember(pendingValue[i], resolution);
        }
        pendingCount = 0;
    }

    /** Forgets the level, as after a gap. */
    void forget() {
        pendingCount = 0;
        restart(0);
    }

    int pendingCount() {
        return pendingCount;
    }

    double pendingSeconds(int index) {
        return pendingSeconds[index];
    }

    double pendingValue(int index) {
        return pendingValue[index];
    }

    /** How far the last pending sample lies from the level before. */
    double changedBy() {
        return changedBy;
    }

    /** Standard deviation of a single sample. */
    double sigma() {
        return sigma;
    }

    private void remember(double value, double resolution) {
        if (!Double.isNaN(last)) {
            double seen = Math.min(SIGMA_FROM_DIFFERENCE * Math.abs(value - last), FAR_SIGMAS * sigma);
            sigma = Math.max(sigma + SIGMA_WEIGHT * (seen - sigma), resolution / STEPS_PER_SIGMA);
        }
        last = value;
        recent[recentNext] = value;
        recentNext = (recentNext + 1) % MEMORY;
        recentCount = Math.min(recentCount + 1, MEMORY);
    }

    /** Of five by exchanges, as it is asked for every sample. */
    private double median() {
        if (recentCount == MEMORY) {
            return medianOfFive(recent[0], recent[1], recent[2], recent[3], recent[4]);
        }
        System.arraycopy(recent, 0, sorted, 0, recentCount);
        Arrays.sort(sorted, 0, recentCount);
        int middle = recentCount / 2;
        return recentCount % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    /** The least and the most of four cannot be it; of the other three it is the middle one. */
    private static double medianOfFive(double a, double b, double c, double d, double e) {
        double low = Math.max(Math.min(a, b), Math.min(c, d));
        double high = Math.min(Math.max(a, b), Math.max(c, d));
        return Math.max(Math.min(low, high), Math.min(Math.max(low, high), e));
    }
}
