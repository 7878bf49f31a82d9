package settlemark.profile;

import java.util.Objects;
import settlemark.measure.Channel;

/**
 * A channel and the field that its values come from; the channel's value is the field's value times the sign.
 *
 * @param channel what it measures
 * @param field index of its field in the profile
 * @param sign 1, or -1 for the second port of a differential gauge, which reads negative under pressure
 * @param line where the profile describes it
 */
public record ChannelSource(Channel channel, int field, int sign, int line) {
    public ChannelSource {
        Objects.requireNonNull(channel);
        if (sign != 1 && sign != -1) {
            throw new IllegalArgumentException("sign must be 1 or -1, got " + sign);
        }
    }
}
