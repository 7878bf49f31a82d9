package settlemark.settle;

import java.util.Locale;

/**
 * Holds one channel to a {@link PublishedRule}, sample by sample and from the past alone.
 *
 * <p>Readings are counted from the first sample on; after a gap, or where a reading is missing, they are counted afresh. Times
 * are in seconds on any scale that grows. For one thread; its state is bounded.
 */
public final class RuleWatch {
    private final PublishedRule rule;
    private final RuleCourse course;
    private final double gapSeconds;
    private SampleRate rate = new SampleRate();
    private double originSeconds = Double.NaN;
    private double lastSeconds = Double.NaN;
    private double sinceSeconds = Double.NaN;
    private boolean running;
    private String before = "";

    /**
     * @param unitFactor units of the samples in a degree Fahrenheit, such as 5/9 for degrees Celsius; it does not matter
     *     where the tolerance is a fraction
     * @param gapSeconds a longer pause starts afresh, unless the samples always come so far apart
     * @throws IllegalArgumentException where one is not positive
     */
    public RuleWatch(PublishedRule rule, double unitFactor, double gapSeconds) {
        if (!(unitFactor > 0 && unitFactor < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("the factor of the unit must be positive, got " + unitFactor);
        }
        if (!(gapSeconds > 0)) {
            throw new IllegalArgumentException("the gap must be positive, got " + gapSeconds);
        }
        this.rule = rule;
        this.gapSeconds = gapSeconds;
        this.course = rule.course(unitFactor);
    }

    /** Takes a sample in; one that is not later than the last is ignored, one that is not finite is a missing reading. */
    public void accept(double timeSeconds, double value) {
        if (!Double.isFinite(timeSeconds) || timeSeconds <= lastSeconds) {
            return;
        }
        double pause = timeSeconds - lastSeconds;
        if (!Double.isFinite(value)) {
            interrupted(timeSeconds, "no value");
            return;
        }
        lastSeconds = timeSeconds;
        if (running && pause > longestPause()) {
            stop(String.format(Locale.ROOT, "gap of %.0f s", pause));
        }
        if (!running) {
            begin(timeSeconds, value);
            return;
        }
        rate.spaced(pause);
        if (!course.take(timeSeconds - originSeconds, value)) {
            stop("a reading was missing");
            begin(timeSeconds, value);
        }
        note();
    }

    /** What came was no measurement, or the link was lost: the readings are counted afresh from the next sample. */
    public void interrupted(double timeSeconds, String why) {
        if (Double.isNaN(lastSeconds) || timeSeconds > lastSeconds) {
            lastSeconds = timeSeconds;
        }
        stop(why);
    }

    private double longestPause() {
        double rare = course.longestPauseSeconds() + SettleDetector.TIME_TOLERANCE_SECONDS;
        return rate.known() ? Math.max(gapSeconds, Math.min(rate.longestPause(gapSeconds), rare)) : rare;
    }

    private void stop(String why) {
        before = why;
        running = false;
        rate = new SampleRate();
        sinceSeconds = Double.NaN;
    }

    private void begin(double timeSeconds, double value) {
        originSeconds = timeSeconds;
        running = true;
        course.begin(value);
    }

    private void note() {
        if (!course.holds()) {
            sinceSeconds = Double.NaN;
        } else if (Double.isNaN(sinceSeconds)) {
            sinceSeconds = lastSeconds;
        }
    }

    /** Whether the readings satisfy the rule now. */
    public boolean holds() {
        return running && course.holds();
    }

    /** What is known now. */
    public RuleState state() {
        boolean holds = holds();
        double toGo = running ? Math.max(0, course.nextSeconds() - (lastSeconds - originSeconds)) : Double.NaN;
        return new RuleState(
                rule,
                holds,
                lastSeconds,
                sinceSeconds,
                running ? originSeconds + course.fromSeconds() : Double.NaN,
                holds ? course.value() : Double.NaN,
                holds ? 2 * course.allowedHalfWidth() / Math.sqrt(3) : Double.NaN,
                holds ? course.allowedHalfWidth() : Double.NaN,
                toGo,
                reason(holds, toGo));
    }

    private String reason(boolean holds, double toGo) {
        if (!running) {
            return "not yet by " + rule.key() + ": no reading" + (before.isEmpty() ? " yet" : ", " + before);
        }
        if (holds) {
            return "steady by " + rule.key() + ": " + course.finding();
        }
        String text = "not yet by " + rule.key() + ": " + course.finding();
        if (toGo > 0) {
            text += String.format(Locale.ROOT, ", more in %.0f s", Math.ceil(toGo));
        }
        return before.isEmpty() ? text : text + " (counted afresh: " + before + ")";
    }
}
