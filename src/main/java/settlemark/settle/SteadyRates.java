package settlemark.settle;

/** Two successive rates, each the mean over a period, that differ by not more than a fraction of the smaller one. */
final class SteadyRates implements RuleCourse {
    private final double periodSeconds;
    private final double fraction;
    /** Whole periods since the beginning. */
    private long periods;

    private double area;
    private double lastSeconds;
    private double lastValue;
    private double before = Double.NaN;
    private double rate = Double.NaN;

    SteadyRates(double periodSeconds, double fraction) {
        this.periodSeconds = periodSeconds;
        this.fraction = fraction;
    }

    @Override
    public void begin(double value) {
        periods = 0;
        area = 0;
        lastSeconds = 0;
        lastValue = value;
        before = Double.NaN;
        rate = Double.NaN;
    }

    @Override
    public boolean take(double seconds, double value) {
        double end = (periods + 1) * periodSeconds;
        if (seconds >= end + periodSeconds) {
            return false;
        }
        if (seconds >= end - SettleDetector.TIME_TOLERANCE_SECONDS) {
            double share = Math.min(1, (end - lastSeconds) / (seconds - lastSeconds));
            double atEnd = lastValue + share * (value - lastValue);
            area += (lastValue + atEnd) / 2 * (end - lastSeconds);
            before = rate;
            rate = area / periodSeconds;
            periods++;
            area = 0;
            lastSeconds = end;
            lastValue = atEnd;
        }
        area += (lastValue + value) / 2 * (seconds - lastSeconds);
        lastSeconds = seconds;
        lastValue = value;
        return true;
    }

    @Override
    public boolean holds() {
        double smaller = Math.min(Math.abs(before), Math.abs(rate));
        return before * rate > 0 && RuleCourse.within(Math.abs(rate - before), fraction * smaller, smaller);
    }

    @Override
    public double value() {
        return (before + rate) / 2;
    }

    @Override
    public double allowedHalfWidth() {
        return fraction * Math.abs(value());
    }

    @Override
    public double fromSeconds() {
        return Math.max(0, periods - 2) * periodSeconds;
    }

    @Override
    public double nextSeconds() {
        return (periods + 1) * periodSeconds;
    }

    @Override
    public double longestPauseSeconds() {
        return periodSeconds;
    }

    @Override
    public String finding() {
        if (periods < 2) {
            return "rate " + (periods + 1) + " of 2";
        }
        double smaller = Math.min(Math.abs(before), Math.abs(rate));
        String both = Reasons.digits(before) + " and " + Reasons.digits(rate);
        return before * rate > 0
                ? "the last two rates, " + both + ", differ by "
                        + Reasons.digits(100 * Math.abs(rate - before) / smaller) + " %, limit "
                        + Reasons.digits(100 * fraction) + " %"
                : "the last two rates, " + both + ", are no rates of one direction";
    }
}
