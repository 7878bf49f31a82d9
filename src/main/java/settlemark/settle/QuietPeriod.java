package settlemark.settle;

import java.util.Arrays;

/** All readings of a period, from the least to the most, within a width. A bin is a part of the period. */
final class QuietPeriod implements RuleCourse {
    private final double binSeconds;
    private final double width;
    private final double[] least;
    private final double[] most;
    private final double[] mean;
    /** Closed bins since the beginning; the open one has that index. */
    private long closed;

    private double openLeast;
    private double openMost;
    private double openMean;
    private int openCount;
    private double range;
    private double value;
    private boolean holds;

    /**
     * @param bins in a period
     * @param width in the unit of the samples
     */
    QuietPeriod(double binSeconds, int bins, double width) {
        this.binSeconds = binSeconds;
        this.width = width;
        least = new double[bins];
        most = new double[bins];
        mean = new double[bins];
    }

    @Override
    public void begin(double first) {
        closed = 0;
        holds = false;
        open(first);
    }

    private void open(double first) {
        openLeast = first;
        openMost = first;
        openMean = first;
        openCount = 1;
    }

    @Override
    public boolean take(double seconds, double sample) {
        long index = (long) Math.floor(seconds / binSeconds + SettleDetector.TIME_TOLERANCE_SECONDS);
        if (index > closed + 1) {
            return false;
        }
        if (index == closed) {
            openCount++;
            openMean += (sample - openMean) / openCount;
            openLeast = Math.min(openLeast, sample);
            openMost = Math.max(openMost, sample);
        } else {
            int at = (int) (closed % least.length);
            least[at] = openLeast;
            most[at] = openMost;
            mean[at] = openMean;
            closed++;
            open(sample);
        }
        judge();
        return true;
    }

    private void judge() {
        holds = false;
        if (closed >= least.length) {
            double low = Math.min(openLeast, Arrays.stream(least).min().orElseThrow());
            double high = Math.max(openMost, Arrays.stream(most).max().orElseThrow());
            range = high - low;
            value = Arrays.stream(mean).average().orElseThrow();
            holds = RuleCourse.within(range, width, Math.max(Math.abs(low), Math.abs(high)));
        }
    }

    @Override
    public boolean holds() {
        return holds;
    }

    @Override
    public double value() {
        return value;
    }

    @Override
    public double allowedHalfWidth() {
        return width / 2;
    }

    @Override
    public double fromSeconds() {
        return Math.max(0, closed - least.length) * binSeconds;
    }

    @Override
    public double nextSeconds() {
        return closed < least.length ? least.length * binSeconds : 0;
    }

    @Override
    public double longestPauseSeconds() {
        return binSeconds;
    }

    @Override
    public String finding() {
        if (closed < least.length) {
            return "minute " + (closed + 1) + " of " + least.length;
        }
        return "all readings of the last " + least.length + " min lie within " + Reasons.digits(range) + ", limit "
                + Reasons.digits(width);
    }
}
