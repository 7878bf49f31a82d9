package settlemark.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.measure.SampleStatus;
import settlemark.profile.ChannelSource;
import settlemark.profile.Field;
import settlemark.profile.FieldRef;

/** Lists the fields of good frames for people. */
final class FieldListing {
    private final Contents contents;
    private final FieldPlaces places;

    FieldListing(Contents contents) {
        this.contents = contents;
        this.places = new FieldPlaces(contents.message());
    }

    /** The fields that stand in a good frame, in the profile's order. */
    List<FrameExplanation.FieldReading> of(byte[] frame) {
        int to = contents.isText() && contents.message().checksum().isPresent()
                ? Ascii.dropBlanks(frame, 0, frame.length)
                : frame.length;
        places.find(frame, 0, to - contents.checksumBytes(), to);
        List<FrameExplanation.FieldReading> listed = new ArrayList<>();
        List<Field> fields = contents.message().fields();
        for (int i = 0; i < fields.size(); i++) {
            if (places.starts[i] >= 0) {
                listed.add(reading(i, fields.get(i), frame));
            }
        }
        return listed;
    }

    private FrameExplanation.FieldReading reading(int index, Field field, byte[] frame) {
        int from = places.starts[index];
        int to = places.ends[index];
        String hex = Ascii.hex(frame, from, to);
        if (field.content() instanceof Field.Literal) {
            return new FrameExplanation.FieldReading(field.name(), from, to, hex, hex, Optional.empty());
        }
        if (field.content() instanceof Field.Characters) {
            String words = "\"" + FactWords.words(frame, from, to) + "\"";
            return new FrameExplanation.FieldReading(field.name(), from, to, hex, words, Optional.empty());
        }
        Optional<ChannelSource> source =
                contents.sources().stream().filter(s -> gives(s, index)).findFirst();
        FieldNumber number =
                FieldNumber.of(field, source.map(ChannelSource::sign).orElse(1));
        String raw = number.shownRaw(frame, from, to);
        return new FrameExplanation.FieldReading(
                field.name(), from, to, hex, raw, value(number, source, frame, from, to));
    }

    /** Whether a field is the first of its channel's that stands in the frame. */
    private boolean gives(ChannelSource source, int field) {
        return source.fields().stream()
                .map(FieldRef::field)
                .filter(candidate -> places.starts[candidate] >= 0)
                .findFirst()
                .filter(first -> first == field)
                .isPresent();
    }

    private static Optional<FrameExplanation.NumberReading> value(
            FieldNumber number, Optional<ChannelSource> source, byte[] frame, int from, int to) {
        FrameValues values = new FrameValues(1, 0);
        @Nullable String complaint = number.read(frame, from, to, 0, values);
        @Nullable SampleStatus status = values.statuses[0];
        if (complaint != null || status == null) {
            return Optional.empty();
        }
        return Optional.of(new FrameExplanation.NumberReading(
                source.map(s -> s.channel().name()).orElse(""),
                values.values[0],
                source.map(s -> s.channel().unit()),
                status));
    }
}
