package settlemark.settle;

/**
 * What is known of a published rule at one instant; immutable, in the unit of the samples. Numbers that there are none of are
 * NaN.
 *
 * @param rule which
 * @param holds whether the readings satisfy it
 * @param timeSeconds of the last sample
 * @param sinceSeconds since when it holds without a break
 * @param fromSeconds start of what was looked at
 * @param value the mean of the readings that satisfied it
 * @param uncertainty its expanded uncertainty: the rule's own tolerance, taken as a rectangle (JCGM 100:2008, 4.3.7), at k =
 *     2. A rule says nothing else about it
 * @param allowedHalfWidth how far from that value the rule lets a reading lie
 * @param secondsToGo until there is more to look at, 0 where that is at every sample
 * @param reason one line
 */
public record RuleState(
        PublishedRule rule,
        boolean holds,
        double timeSeconds,
        double sinceSeconds,
        double fromSeconds,
        double value,
        double uncertainty,
        double allowedHalfWidth,
        double secondsToGo,
        String reason) {

    /** Whether a value that was proved is one that the readings of the rule stand for, and not one that came after them. */
    public boolean standsFor(double proved) {
        return holds && RuleCourse.within(Math.abs(proved - value), allowedHalfWidth, Math.abs(value));
    }
}
