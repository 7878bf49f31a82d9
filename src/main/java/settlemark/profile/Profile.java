package settlemark.profile;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import settlemark.measure.Channel;

/**
 * What a device's bytes mean. Made by {@link ProfileReader} only, which has checked that the parts fit each other.
 *
 * @param id key of the device, lower-case letters, digits and hyphens
 * @param name for people
 * @param description for people, may be empty
 * @param simulated the device is invented; all that comes from it is marked as simulated
 * @param digest SHA-256 of the document's bytes, 64 lower-case hexadecimal digits
 * @param text the document that it was read from, kept with every session that used it
 * @param serial settings of the serial line, empty where the profile has none
 * @param framing how the stream is cut into frames
 * @param columns how lines are cut into columns, empty where no field needs them
 * @param checksum at the frame's end, empty where there is none
 * @param fields in the document's order
 * @param sources the channels, in the order of their indices in samples
 * @param examples frames that prove the profile
 */
public record Profile(
        String id,
        String name,
        String description,
        boolean simulated,
        String digest,
        String text,
        Optional<SerialLine> serial,
        Framing framing,
        Optional<Framing.Columns> columns,
        Optional<Checksum> checksum,
        List<Field> fields,
        List<ChannelSource> sources,
        List<Example> examples) {
    public Profile {
        Objects.requireNonNull(id);
        Objects.requireNonNull(name);
        Objects.requireNonNull(description);
        Objects.requireNonNull(digest);
        Objects.requireNonNull(text);
        Objects.requireNonNull(framing);
        fields = List.copyOf(fields);
        sources = List.copyOf(sources);
        examples = List.copyOf(examples);
    }

    /** The channels; a sample's channel is an index into this list. */
    public List<Channel> channels() {
        return sources.stream().map(ChannelSource::channel).toList();
    }

    /** Index of the channel with a name, empty where there is none. */
    public Optional<Integer> channelIndex(String channelName) {
        for (int i = 0; i < sources.size(); i++) {
            if (sources.get(i).channel().name().equals(channelName)) {
                return Optional.of(i);
            }
        }
        return Optional.empty();
    }
}
