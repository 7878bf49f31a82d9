package settlemark.decode;

import settlemark.measure.SampleStatus;

/** Takes what a decoder finds, in the order of the stream. Called on the thread that gives the bytes. */
public interface DecodeSink {
    /**
     * A value of a channel.
     *
     * @param channel index in the profile's channels
     * @param timeNanos session time at which the frame's last byte arrived
     * @param value in the channel's unit; NaN where the status is not OK
     * @param status what the gauge says about it
     */
    void sample(int channel, long timeNanos, double value, SampleStatus status);

    /** Bytes that are no good frame. */
    void rejected(Rejected rejected);
}
