package settlemark.profile;

import java.util.ArrayList;
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
 * @param recognitions how the device may be recognised, any of them
 * @param link how it is connected, empty where the profile does not say
 * @param startUp what is done after each connection, before anything else
 * @param actions what a person may have it do
 * @param messages what it sends, one at least
 * @param sources the channels, in the order of their indices in samples
 * @param facts what it says about itself in words
 * @param examples frames that prove the profile
 */
public record Profile(
        String id,
        String name,
        String description,
        boolean simulated,
        String digest,
        String text,
        List<Recognition> recognitions,
        Optional<Link> link,
        List<Step> startUp,
        List<Action> actions,
        List<Message> messages,
        List<ChannelSource> sources,
        List<FactSource> facts,
        List<Example> examples) {
    public Profile {
        Objects.requireNonNull(id);
        Objects.requireNonNull(name);
        Objects.requireNonNull(description);
        Objects.requireNonNull(digest);
        Objects.requireNonNull(text);
        Objects.requireNonNull(link);
        recognitions = List.copyOf(recognitions);
        startUp = List.copyOf(startUp);
        actions = List.copyOf(actions);
        messages = List.copyOf(messages);
        sources = List.copyOf(sources);
        facts = List.copyOf(facts);
        examples = List.copyOf(examples);
        if (messages.isEmpty()) {
            throw new IllegalArgumentException("a profile has one message at least");
        }
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

    /** Settings of the serial line, empty for a device without one. */
    public Optional<SerialLine> serial() {
        return link.flatMap(l -> {
            if (l instanceof Link.Serial serial) {
                return Optional.of(serial.line());
            }
            return l instanceof Link.ModbusRtu modbus ? Optional.of(modbus.line()) : Optional.empty();
        });
    }

    /** What chunks come from: first the messages in their order, then the descriptors that are honoured. */
    public List<Input> inputs() {
        List<Input> inputs = new ArrayList<>();
        for (int i = 0; i < messages.size(); i++) {
            inputs.add(new Input(Input.Kind.FRAMES, i));
        }
        for (int i = 0; i < messages.size(); i++) {
            if (messages.get(i).source() instanceof Source.Characteristic characteristic) {
                if (characteristic.presentation()) {
                    inputs.add(new Input(Input.Kind.PRESENTATION, i));
                }
                if (characteristic.measurement()) {
                    inputs.add(new Input(Input.Kind.MEASUREMENT, i));
                }
            }
        }
        return List.copyOf(inputs);
    }

    public Field field(FieldRef ref) {
        return messages.get(ref.message()).fields().get(ref.field());
    }
}
