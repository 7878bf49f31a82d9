package settlemark.settle;

import java.util.Optional;

/**
 * Where a gas pressure is heading while a screw is turned: the last level and what the appliance and the probe still owe.
 *
 * <p>No time constant is learnt: what is owed is the slope of a short line for {@value #LAG_SECONDS} s, give or take
 * {@value #LAG_UNKNOWN_SECONDS} s, which holds lags up to about two seconds. While the slope does not fall the hand is still
 * turning, and nothing is known; a second line behind the first tells which it is. Not thread-safe; creates nothing for a
 * sample.
 */
public final class Heading {
    /** @param value in the unit of the samples @param uncertainty about 95 %, in the same */
    public record Estimate(double value, double uncertainty) {}

    private static final double LAG_SECONDS = 0.5;
    private static final double LAG_UNKNOWN_SECONDS = 1.2;
    private static final double TWO_SIDED_95 = 0.975;
    private static final double NEW_TURN_SIGMAS = 3;
    private static final double SPAN_SECONDS = 1.6;
    private static final double LONGEST_SPAN_SECONDS = 6;
    private static final int FEWEST_SAMPLES = 4;
    private static final int CAPACITY = 128;
    private static final double FALLING_SHARE = 0.5;

    private final StudentT studentT = new StudentT(TWO_SIDED_95, CAPACITY);
    private final double quietLimit;
    private final double resolution;
    private final double[] seconds = new double[CAPACITY];
    private final double[] values = new double[CAPACITY];
    private int next;
    private int count;

    private double level;
    private double slope;
    private double slopeVariance;
    private double residualVariance;
    private int used;
    private int usedUntil;

    /**
     * @param settings of the channel; a movement of less than half its limit a second counts as none
     * @param resolution step in which the probe counts, 0 or NaN where it is not known
     */
    public Heading(SettleSettings settings, double resolution) {
        this.quietLimit = settings.driftLimit() / 2;
        this.resolution = resolution > 0 ? resolution : 0;
    }

    /** Takes one sample in; a value that is not finite forgets all. Times increase; one that does not is left out. */
    public void accept(double timeSeconds, double value) {
        if (!Double.isFinite(value)) {
            count = 0;
            return;
        }
        if (count > 0) {
            double pause = timeSeconds - seconds[slot(1)];
            if (!(pause > 0)) {
                return;
            }
            count = pause > LONGEST_SPAN_SECONDS ? 0 : count;
        }
        seconds[next] = timeSeconds;
        values[next] = value;
        next = (next + 1) % CAPACITY;
        count = Math.min(count + 1, CAPACITY);
    }

    /** What is known now; empty while the hand may still be turning, and while too little has come. */
    public Optional<Estimate> estimate() {
        if (!line(0)) {
            return Optional.empty();
        }
        double quantile = studentT.quantile(used - 2);
        double nowLevel = level;
        double nowSlope = slope;
        double nowVariance = slopeVariance;
        double levelVariance = residualVariance * 4 / used;
        double noise = Math.sqrt(nowVariance);
        double steepest = line(usedUntil) ? Math.abs(slope) : Double.NaN;
        boolean quiet = Math.abs(nowSlope) <= quietLimit + 2 * noise;
        boolean falling = Math.abs(nowSlope) < FALLING_SHARE * steepest;
        if (!quiet && !falling || newestLeavesTheLine()) {
            return Optional.empty();
        }
        double owed = nowSlope * LAG_SECONDS;
        double unknown = Math.abs(nowSlope) * LAG_UNKNOWN_SECONDS;
        double uncertainty = Math.sqrt(quantile * quantile * (levelVariance + nowVariance * LAG_SECONDS * LAG_SECONDS)
                + unknown * unknown
                + resolution * resolution / 4);
        return Optional.of(new Estimate(nowLevel + owed, uncertainty));
    }

    /** The first sample of a new turn, or a spike. */
    private boolean newestLeavesTheLine() {
        if (!line(1)) {
            return true;
        }
        double expected = level + slope * (seconds[slot(1)] - seconds[slot(2)]);
        double sigma = Math.max(Math.sqrt(residualVariance), quietLimit / 2);
        return Math.abs(values[slot(1)] - expected) > NEW_TURN_SIGMAS * sigma;
    }

    private int slot(int ago) {
        return (next - ago + CAPACITY) % CAPACITY;
    }

    /** A line through the samples from the one so many ago back; its level is that at its newest sample. */
    private boolean line(int skipped) {
        used = 0;
        if (count - skipped < FEWEST_SAMPLES) {
            return false;
        }
        double newest = seconds[slot(skipped + 1)];
        double reference = values[slot(skipped + 1)];
        double sumTime = 0;
        double sumValue = 0;
        while (used < count - skipped) {
            double time = seconds[slot(skipped + used + 1)] - newest;
            if (used >= FEWEST_SAMPLES && time < -SPAN_SECONDS || time < -LONGEST_SPAN_SECONDS) {
                break;
            }
            sumTime += time;
            sumValue += values[slot(skipped + used + 1)] - reference;
            used++;
        }
        usedUntil = skipped + used;
        return used >= FEWEST_SAMPLES && fit(skipped, newest, sumTime / used, reference, sumValue / used);
    }

    private boolean fit(int skipped, double newest, double meanTime, double reference, double meanValue) {
        double squaredTime = 0;
        double product = 0;
        double squaredValue = 0;
        for (int i = 1; i <= used; i++) {
            double time = seconds[slot(skipped + i)] - newest - meanTime;
            double value = values[slot(skipped + i)] - reference - meanValue;
            squaredTime += time * time;
            product += time * value;
            squaredValue += value * value;
        }
        slope = product / squaredTime;
        level = reference + meanValue - slope * meanTime;
        residualVariance = Math.max((squaredValue - slope * product) / (used - 2), resolution * resolution / 12);
        slopeVariance = residualVariance / squaredTime;
        return true;
    }
}
