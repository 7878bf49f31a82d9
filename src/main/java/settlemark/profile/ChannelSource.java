package settlemark.profile;

import java.util.List;
import java.util.Objects;
import settlemark.measure.Channel;

/**
 * A channel and the fields that its values come from; the channel's value is the field's value times the sign.
 *
 * @param channel what it measures
 * @param fields one at least, numbers of one message; the first that stands in a frame gives the value
 * @param sign 1, or -1 for the second port of a differential gauge, which reads negative under pressure
 * @param line where the profile describes it
 */
public record ChannelSource(Channel channel, List<FieldRef> fields, int sign, int line) {
    public ChannelSource {
        Objects.requireNonNull(channel);
        fields = List.copyOf(fields);
        if (fields.stream().map(FieldRef::message).distinct().count() != 1) {
            throw new IllegalArgumentException("a channel has one field at least, all of one message");
        }
        if (sign != 1 && sign != -1) {
            throw new IllegalArgumentException("sign must be 1 or -1, got " + sign);
        }
    }

    /** Index of the message that the values come from. */
    public int message() {
        return fields.get(0).message();
    }
}
