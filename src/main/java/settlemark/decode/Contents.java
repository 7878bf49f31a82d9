package settlemark.decode;

import java.util.List;
import java.util.stream.IntStream;
import settlemark.profile.ChannelSource;
import settlemark.profile.Checksum;
import settlemark.profile.FactSource;
import settlemark.profile.Field;
import settlemark.profile.Framing;
import settlemark.profile.Message;
import settlemark.profile.Profile;
import settlemark.profile.Source;

/**
 * A message with the channels and facts that come from it.
 *
 * @param message as the profile has it, or changed by what the device says about itself
 * @param channels indices in the profile's channels, rising
 * @param sources of these channels
 * @param facts indices in the profile's facts, rising
 * @param factFields indices of their fields in the message
 */
record Contents(
        Message message, List<Integer> channels, List<ChannelSource> sources, List<Integer> facts, int[] factFields) {

    static Contents of(Profile profile, int index) {
        List<ChannelSource> all = profile.sources();
        List<FactSource> said = profile.facts();
        List<Integer> channels = IntStream.range(0, all.size())
                .filter(i -> all.get(i).message() == index)
                .boxed()
                .toList();
        List<Integer> facts = IntStream.range(0, said.size())
                .filter(i -> said.get(i).field().message() == index)
                .boxed()
                .toList();
        return new Contents(
                profile.messages().get(index),
                channels,
                channels.stream().map(all::get).toList(),
                facts,
                facts.stream().mapToInt(i -> said.get(i).field().field()).toArray());
    }

    Contents with(Message changed) {
        return new Contents(changed, channels, sources, facts, factFields);
    }

    Field field(int index) {
        return message.fields().get(index);
    }

    /** Indices of the fields that a channel's values come from. */
    int[] fieldsOf(int channel) {
        return sources.get(channel).fields().stream()
                .mapToInt(ref -> ref.field())
                .toArray();
    }

    FrameValues values() {
        return new FrameValues(channels.size(), facts.size());
    }

    /** Frames are text: fields are found in columns or by patterns, or frames are lines. */
    boolean isText() {
        return message.framing() instanceof Framing.Line
                || message.fields().stream()
                        .anyMatch(field ->
                                field.place() instanceof Field.InColumn || field.place() instanceof Field.ByPattern);
    }

    int checksumBytes() {
        return message.checksum().map(Checksum::bytesAtEnd).orElse(0);
    }

    /** Bytes that a frame needs to hold all that must be there, with its checksum. */
    int leastBytes() {
        int end = message.tagged().map(tagged -> tagged.at()).orElse(0);
        for (Field field : message.fields()) {
            if (field.place() instanceof Field.AtByte at && field.when().isEmpty()) {
                end = Math.max(end, at.offset() + FieldPlaces.size(field.content()));
            }
        }
        boolean goesOn = message.checksum().map(c -> c.followedBy() > 0).orElse(false);
        return goesOn && message.framing() instanceof Framing.Fixed fixed
                ? Math.max(end, fixed.maximumBytes())
                : end + checksumBytes();
    }

    /** Whether a frame that has lost its beginning can be told from a whole one; an answer begins after its request. */
    boolean provesItsStart() {
        return message.source() instanceof Source.Answer
                || message.checksum().isPresent()
                || message.fields().stream()
                        .anyMatch(field -> field.content() instanceof Field.Literal
                                && field.when().isEmpty()
                                && (field.place() instanceof Field.InColumn column && column.index() == 0
                                        || field.place() instanceof Field.AtByte at && at.offset() == 0));
    }
}
