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

    /**
     * Something that the device says about itself; comes with each frame that says it.
     *
     * @param fact index in the profile's facts
     * @param timeNanos session time at which the frame's last byte arrived
     * @param words without blanks at their ends; may be empty
     */
    default void fact(int fact, long timeNanos, String words) {}

    /**
     * How the device measures what a message carries, as it says itself.
     *
     * @param message index in the profile's messages
     * @param timeNanos session time at which it was read
     */
    default void note(int message, long timeNanos, MeasurementNote note) {}
}
