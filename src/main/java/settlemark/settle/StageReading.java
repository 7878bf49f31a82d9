package settlemark.settle;

import java.util.List;
import java.util.Optional;
import settlemark.measure.Role;

/**
 * A reading of a whole stage: all its channels at one instant.
 *
 * @param step key of the plan's step that asked for it
 * @param purpose what it stands for within the step, such as {@code found}, {@code adjusted}, {@code left}
 * @param timeNanos when it was taken, session time
 * @param byHand true where a person took it before everything had settled
 * @param handReason why, empty where it took itself
 * @param channels one part a channel, in the order of the roles
 */
public record StageReading(
        String step, String purpose, long timeNanos, boolean byHand, String handReason, List<ChannelReading> channels) {
    public StageReading {
        channels = List.copyOf(channels);
    }

    public Optional<ChannelReading> channel(Role role) {
        return channels.stream().filter(c -> c.role() == role).findFirst();
    }
}
