package settlemark.decode;

import settlemark.measure.SampleStatus;
import settlemark.profile.Framing;
import settlemark.profile.Profile;

/**
 * Runs a profile backwards: the frame that decodes to given values. What the profile does not describe is taken from
 * its first example that decodes; a counter goes up by one with each frame.
 *
 * <p>Values are rounded to the steps of the wire, half to even. A value that the wire cannot carry becomes over or under
 * range where the profile has such a code, else the nearest that it can carry.
 *
 * <p>For one thread at a time.
 */
public final class Encoder {
    private final FrameWriter writer;
    private final int channels;

    /**
     * Prepares to write frames.
     *
     * @throws IllegalArgumentException where a field is found by a pattern and no good example shows the line around it
     */
    public Encoder(Profile profile) {
        writer = profile.messages().get(0).framing() instanceof Framing.Line
                ? new LineWriter(profile)
                : new BinaryWriter(profile);
        channels = profile.sources().size();
    }

    /** Whether the profile has a code for a status of a channel; it always has one for OK. */
    public boolean canSay(int channel, SampleStatus status) {
        return status == SampleStatus.OK || writer.says(channel, status);
    }

    /**
     * The frame that decodes to these values, whole with start, checksum and delimiter.
     *
     * @param values by channel, in the channel's unit; ignored where the status is not OK
     * @param statuses by channel
     * @throws IllegalArgumentException where the arrays do not fit the channels, a value is not finite, or the profile
     *     has no code for a status
     */
    public byte[] encode(double[] values, SampleStatus[] statuses) {
        if (values.length != channels || statuses.length != channels) {
            throw new IllegalArgumentException("the profile has " + channels + " channels, got " + values.length
                    + " values and " + statuses.length + " statuses");
        }
        for (int i = 0; i < channels; i++) {
            if (!canSay(i, statuses[i])) {
                throw new IllegalArgumentException("the profile has no code for " + statuses[i] + " in channel " + i);
            }
            if (statuses[i] == SampleStatus.OK && !Double.isFinite(values[i])) {
                throw new IllegalArgumentException("channel " + i + " must be a finite number, got " + values[i]);
            }
        }
        return writer.write(values, statuses);
    }
}
