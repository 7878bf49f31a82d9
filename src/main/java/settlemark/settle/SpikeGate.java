package settlemark.settle;

import java.util.Arrays;

/**
 * Tells single spikes from real changes, and knows the noise of single samples.
 *
 * <p>A sample far from the median of the last five waits. When enough wait on the same side, the reading has changed; when
 * an ordinary sample follows first, the waiting ones were a spike; but spikes are few, and where one of four samples would be
 * one they are swings faster than the probe shows, and count. The noise is the mean absolute successive difference
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
    private static final double SPIKE_WEIGHT = 1.0 / 16;
    private static final double MOST_SPIKES = 0.2;

    private final double driftLimit;
    private final double[] recent = new double[MEMORY];
    private final double[] sorted = new double[MEMORY];
    private int recentCount;
    private int recentNext;
    private double last = Double.NaN;
    private double sigma;
    /** Share of the last samples that were taken for spikes. */
    private double spikes;

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
        boolean near = Math.abs(away) <= Math.max(FAR_SIGMAS * sigma, Math.max(FAR_STEPS * resolution, driftLimit));
        if (near || spikes > MOST_SPIKES) {
            drop();
            spikes -= SPIKE_WEIGHT * spikes;
            remember(value, resolution);
            return Verdict.ORDINARY;
        }
        if (pendingCount > 0 && away > 0 != changedBy > 0) {
            drop();
        }
        pendingSeconds[pendingCount] = seconds;
        pendingValue[pendingCount] = value;
        pendingCount++;
        changedBy = away;
        return pendingCount >= rate.samplesForChange() ? Verdict.CHANGED : Verdict.WAITING;
    }

    /** The waiting samples were a spike. */
    private void drop() {
        for (int i = 0; i < pendingCount; i++) {
            spikes += SPIKE_WEIGHT * (1 - spikes);
        }
        pendingCount = 0;
    }

    /** Starts from the pending samples, as the first of a new segment. The noise of the probe stays known. */
    void restart(double resolution) {
        spikes = 0;
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
            double difference = SIGMA_FROM_DIFFERENCE * Math.abs(value - last);
            // Where nothing is rounded and nothing was noisy so far there is nothing to hold it to.
            double seen = sigma > 0 ? Math.min(difference, FAR_SIGMAS * sigma) : difference;
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
