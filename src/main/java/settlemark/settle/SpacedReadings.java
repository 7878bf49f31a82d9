package settlemark.settle;

/**
 * Readings at equal times, the last few of which lie near their mean or near the first of them.
 *
 * <p>The reading of a moment is the sample nearest to it; one that is further off than a twentieth of the spacing (this
 * program's own) is no reading of that moment, and the reading is missing.
 */
final class SpacedReadings implements RuleCourse {
    private static final double SLACK = 0.05;

    private final String noun;
    private final double spacingSeconds;
    private final double tolerance;
    private final boolean fromFirst;
    private final double[] readings;
    private final double[] times;
    /** Readings since the beginning. */
    private long taken;

    private double candidateSeconds = Double.NaN;
    private double candidate;
    private double mean;
    private double deviation;
    private boolean holds;

    /**
     * @param noun what a reading is called
     * @param tolerance in the unit of the samples
     * @param fromFirst whether the deviation is from the first of the readings, else from their mean
     */
    SpacedReadings(String noun, double spacingSeconds, int count, double tolerance, boolean fromFirst) {
        this.noun = noun;
        this.spacingSeconds = spacingSeconds;
        this.tolerance = tolerance;
        this.fromFirst = fromFirst;
        this.readings = new double[count];
        this.times = new double[count];
    }

    @Override
    public void begin(double value) {
        taken = 0;
        candidateSeconds = Double.NaN;
        read(0, value);
    }

    @Override
    public boolean take(double seconds, double value) {
        double moment = taken * spacingSeconds;
        double slack = SLACK * spacingSeconds;
        if (seconds < moment - SettleDetector.TIME_TOLERANCE_SECONDS) {
            remember(seconds, value, moment - slack);
            return true;
        }
        boolean near = seconds - moment <= slack + SettleDetector.TIME_TOLERANCE_SECONDS;
        boolean had = !Double.isNaN(candidateSeconds);
        if (near && !(had && moment - candidateSeconds < seconds - moment)) {
            read(seconds, value);
            return true;
        }
        if (had) {
            read(candidateSeconds, candidate);
            return take(seconds, value);
        }
        return false;
    }

    private void remember(double seconds, double value, double sinceSeconds) {
        boolean near = seconds >= sinceSeconds - SettleDetector.TIME_TOLERANCE_SECONDS;
        candidateSeconds = near ? seconds : Double.NaN;
        candidate = value;
    }

    private void read(double seconds, double value) {
        int at = (int) (taken % readings.length);
        readings[at] = value;
        times[at] = seconds;
        taken++;
        candidateSeconds = Double.NaN;
        holds = false;
        if (taken >= readings.length) {
            judge();
        }
    }

    private void judge() {
        double sum = 0;
        double largest = 0;
        for (double reading : readings) {
            sum += reading;
            largest = Math.max(largest, Math.abs(reading));
        }
        mean = sum / readings.length;
        double centre = fromFirst ? readings[oldest()] : mean;
        deviation = 0;
        for (double reading : readings) {
            deviation = Math.max(deviation, Math.abs(reading - centre));
        }
        holds = RuleCourse.within(deviation, tolerance, largest);
    }

    private int oldest() {
        return (int) (taken % readings.length);
    }

    @Override
    public boolean holds() {
        return holds;
    }

    @Override
    public double value() {
        return mean;
    }

    @Override
    public double allowedHalfWidth() {
        return tolerance;
    }

    @Override
    public double fromSeconds() {
        return taken < readings.length ? times[0] : times[oldest()];
    }

    @Override
    public double nextSeconds() {
        return taken * spacingSeconds;
    }

    @Override
    public double longestPauseSeconds() {
        return spacingSeconds * (1 + 2 * SLACK);
    }

    @Override
    public String finding() {
        if (taken < readings.length) {
            return noun + " " + taken + " of " + readings.length;
        }
        return "the last " + readings.length + " lie within ±" + Reasons.digits(deviation) + " of "
                + (fromFirst ? "their first" : "their mean") + ", limit ±" + Reasons.digits(tolerance);
    }
}
