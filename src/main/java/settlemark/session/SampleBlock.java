package settlemark.session;

import settlemark.measure.SampleStatus;

/**
 * Samples of one channel in order of time, in the channel's own unit.
 *
 * @param probe index in the header
 * @param channel index in the probe's profile
 * @param timesNanos session times
 * @param values NaN where the status leaves none
 * @param statuses ordinal of {@link SampleStatus}
 */
public record SampleBlock(int probe, int channel, long[] timesNanos, double[] values, byte[] statuses) {
    public SampleBlock {
        if (timesNanos.length != values.length || values.length != statuses.length) {
            throw new IllegalArgumentException("times, values and statuses must be equally many");
        }
    }

    public int size() {
        return timesNanos.length;
    }

    public SampleStatus status(int index) {
        return SampleStatus.values()[statuses[index]];
    }
}
