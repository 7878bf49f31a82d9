package settlemark.decode;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.measure.SampleStatus;
import settlemark.profile.Profile;
import settlemark.profile.Secrets;

/**
 * Runs a profile backwards: the frame that decodes to given values. What the profile does not describe is taken from
 * the message's first example that decodes; counters go up by one with each frame, that of a protection too.
 *
 * <p>Values are rounded to the steps of the wire, half to even. A value that the wire cannot carry becomes over or under
 * range where the profile has such a code, else the nearest that it can carry.
 *
 * <p>For one thread at a time.
 */
public final class Encoder {
    private final Profile profile;
    private final Secrets secrets;
    private final @Nullable MessageEncoder[] messages;

    /** Writes plain frames. */
    public Encoder(Profile profile) {
        this(profile, Secrets.NONE);
    }

    /**
     * Prepares to write frames; where the first example of a message is protected, its frames are so too, with these
     * secrets.
     *
     * @throws IllegalArgumentException where a field of the first message is found by a pattern and no good example shows
     *     the line around it; for other messages this comes with their first frame
     */
    public Encoder(Profile profile, Secrets secrets) {
        this.profile = profile;
        this.secrets = secrets;
        this.messages = new MessageEncoder[profile.messages().size()];
        message(0);
    }

    /** Whether the profile has a code for a status of a channel; it always has one for OK. */
    public boolean canSay(int channel, SampleStatus status) {
        MessageEncoder message = message(profile.sources().get(channel).message());
        return message.says(message.contents().channels().indexOf(channel), status);
    }

    /**
     * The frame of the first message that decodes to these values, whole with start, checksum and delimiter.
     *
     * @param values by channel, in the channel's unit; ignored where the status is not OK
     * @param statuses by channel
     * @throws IllegalArgumentException where the arrays do not fit the channels, a value is not finite, or the profile
     *     has no code for a status
     */
    public byte[] encode(double[] values, SampleStatus[] statuses) {
        return encode(0, values, statuses);
    }

    /**
     * The frame of a message that decodes to these values; what it says of facts is taken from its example.
     *
     * @param message index in the profile's messages
     * @param values by channel of the profile; only those of the message's channels matter
     * @param statuses by channel of the profile, null for a channel that the frame must not give
     * @throws IllegalArgumentException where the arrays do not fit the channels, a value is not finite, the profile has
     *     no code for a status, or no frame gives exactly these channels
     */
    public byte[] encode(int message, double[] values, @Nullable SampleStatus[] statuses) {
        return encode(message, values, statuses, new String[profile.facts().size()]);
    }

    /**
     * The frame of a message that decodes to these values and words.
     *
     * @param words by fact of the profile, null for what the example says
     * @throws IllegalArgumentException as above, or where words do not fit their place
     */
    public byte[] encode(int message, double[] values, @Nullable SampleStatus[] statuses, @Nullable String[] words) {
        int channels = profile.sources().size();
        if (values.length != channels || statuses.length != channels) {
            throw new IllegalArgumentException("the profile has " + channels + " channels, got " + values.length
                    + " values and " + statuses.length + " statuses");
        }
        if (words.length != profile.facts().size()) {
            throw new IllegalArgumentException(
                    "the profile has " + profile.facts().size() + " facts, got " + words.length + " words");
        }
        MessageEncoder encoder = message(message);
        List<Integer> own = encoder.contents().channels();
        double[] ownValues = new double[own.size()];
        @Nullable SampleStatus[] ownStatuses = new SampleStatus[own.size()];
        for (int i = 0; i < ownValues.length; i++) {
            int channel = own.get(i);
            check(channel, values[channel], statuses[channel]);
            ownValues[i] = values[channel];
            ownStatuses[i] = statuses[channel];
        }
        @Nullable
        String[] ownWords =
                encoder.contents().facts().stream().map(fact -> words[fact]).toArray(String[]::new);
        return encoder.encode(ownValues, ownStatuses, ownWords);
    }

    private void check(int channel, double value, @Nullable SampleStatus status) {
        if (status != null && !canSay(channel, status)) {
            throw new IllegalArgumentException("the profile has no code for " + status + " in channel " + channel);
        }
        if (status == SampleStatus.OK && !Double.isFinite(value)) {
            throw new IllegalArgumentException("channel " + channel + " must be a finite number, got " + value);
        }
    }

    private MessageEncoder message(int index) {
        MessageEncoder encoder = messages[index];
        if (encoder == null) {
            Optional<Trial> proved = Trial.proved(profile, index);
            encoder = new MessageEncoder(Contents.of(profile, index), proved.map(Trial::pattern), secrets);
            messages[index] = encoder;
        }
        return encoder;
    }
}
