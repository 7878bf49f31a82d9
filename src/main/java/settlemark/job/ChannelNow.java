package settlemark.job;

import java.util.Objects;
import settlemark.measure.Accuracy;
import settlemark.measure.Conversion;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.settle.SettleLook;
import settlemark.settle.SettleState;

/**
 * One channel as the job sees it, in the job's unit and before the zero is taken off.
 *
 * @param unit the job's unit for this kind of channel
 * @param timeNanos session time of the last sample
 * @param value of the last sample, NaN where it was no measurement
 * @param status what the gauge said
 * @param look the detector's state, described where somebody asks
 * @param settledSinceNanos session time since which it has been settled without a break, -1 where it is not
 * @param shortestWindowSeconds the least time after an act before a reading can belong to it
 * @param accuracy the maker's statement, in the gauge's own unit
 * @param fromOwn the change from the gauge's own unit to the job's
 * @param resolution in the same unit, NaN where unknown
 * @param zeroLimit largest healthy zero offset in the same unit, NaN where unknown
 * @param longestPauseSeconds a longer silence is a gap
 * @param breaks how often its readings have been broken off so far, by whatever
 */
public record ChannelNow(
        Unit unit,
        long timeNanos,
        double value,
        SampleStatus status,
        SettleLook look,
        long settledSinceNanos,
        double shortestWindowSeconds,
        Accuracy accuracy,
        Conversion fromOwn,
        double resolution,
        double zeroLimit,
        double longestPauseSeconds,
        int breaks) {
    public ChannelNow {
        Objects.requireNonNull(unit);
        Objects.requireNonNull(status);
        Objects.requireNonNull(look);
        Objects.requireNonNull(accuracy);
        Objects.requireNonNull(fromOwn);
    }

    /** Whether the detector calls it settled. */
    boolean settled() {
        return look.settled();
    }

    /** The detector's state, in the same unit; its times are session seconds. */
    public SettleState settle() {
        return look.state();
    }

    /**
     * Standard uncertainty of the instrument at a value, in the job's unit. A fraction of the reading is one of what the
     * gauge itself shows: 1 % of 50 °C is not 1 % of 122 °F.
     */
    double instrumentUncertainty(double jobValue) {
        double own = fromOwn.inverse().apply(jobValue);
        return Math.abs(fromOwn.applyDifference(accuracy.standardUncertainty(own)));
    }
}
