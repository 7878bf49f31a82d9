package settlemark.profile;

import java.util.List;
import settlemark.measure.Channel;

/**
 * A device profile: what a gauge's bytes mean.
 *
 * @param id such as {@code demo-gauge}
 * @param name as shown
 * @param simulated true where it describes an instrument of the rig
 * @param digest SHA-256 of its text, in hex
 * @param text the document that it was read from
 * @param channels in order; samples name them by index
 */
public record Profile(String id, String name, boolean simulated, String digest, String text, List<Channel> channels) {
    public Profile {
        channels = List.copyOf(channels);
    }
}
