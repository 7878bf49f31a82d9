package settlemark.settle;

/** How far the readings of a published rule have come; times are seconds since its first reading. */
sealed interface RuleCourse permits SpacedReadings, QuietPeriod, SteadyRates {
    /** The first reading; forgets whatever was before. */
    void begin(double value);

    /**
     * The next sample.
     *
     * @param seconds since {@link #begin}, growing
     * @return false where a reading is missing, so that it must begin again
     */
    boolean take(double seconds, double value);

    /** Whether the readings that there are satisfy it. */
    boolean holds();

    /** The mean of the readings that satisfied it. */
    double value();

    /** Half the width that the rule allows about that value. */
    double allowedHalfWidth();

    /** Start of what was looked at. */
    double fromSeconds();

    /** When there will be more to look at, 0 where that is at every sample. */
    double nextSeconds();

    /** The longest pause between samples with which it can still be judged. */
    double longestPauseSeconds();

    /** What was found, without the rule's name. */
    String finding();

    /** Whether a deviation is not more than a limit: the limit itself is allowed, and decimals that binary cannot hold. */
    static boolean within(double deviation, double limit, double magnitude) {
        return deviation <= limit + 1e-9 * limit + 4 * Math.ulp(magnitude);
    }
}
