package settlemark.measure;

/**
 * One value of one channel of a probe.
 *
 * @param channel index of the channel in the probe's profile, from 0
 * @param timeNanos session time in nanoseconds
 * @param value in the channel's own unit; NaN where the status leaves none
 * @param status what the gauge says about it
 */
public record Sample(int channel, long timeNanos, double value, SampleStatus status) {}
