package settlemark.decode;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import settlemark.measure.SampleStatus;
import settlemark.profile.Field;
import settlemark.profile.Framing;

/**
 * Writes frames with fields at offsets and in tagged values: those of a pattern, with what the fields hold put in place
 * of its own. A frame grows where a field that it must hold lies beyond its end.
 */
final class BinaryWriter implements FrameWriter {
    private final Contents contents;
    private final List<Field> fields;
    private final FieldPlaces places;
    private final @Nullable TagWalk walk;
    private final @Nullable ChecksumCheck checksum;
    private final int checksumBytes;
    private final @Nullable FrameCounter counter;
    /** By channel: the numbers of the fields that may give its value. */
    private final FieldNumber[][] numbers;

    private final byte[] pattern;
    private long count;

    BinaryWriter(Contents contents, Optional<byte[]> proved) {
        this.contents = contents;
        fields = contents.message().fields();
        places = new FieldPlaces(contents.message());
        walk = contents.message().tagged().map(TagWalk::new).orElse(null);
        checksum = contents.message().checksum().map(ChecksumCheck::new).orElse(null);
        checksumBytes = contents.checksumBytes();
        counter = FrameCounter.of(contents.message());
        numbers = new FieldNumber[contents.sources().size()][];
        Arrays.setAll(
                numbers,
                i -> Arrays.stream(contents.fieldsOf(i))
                        .mapToObj(field -> FieldNumber.of(
                                contents.field(field), contents.sources().get(i).sign()))
                        .toArray(FieldNumber[]::new));
        pattern = proved.map(byte[]::clone).orElseGet(this::blank);
        locate(pattern);
        int at = counter == null ? -1 : places.starts[counter.field];
        count = counter == null || at < 0 || at + counter.number.bytes() > pattern.length
                ? 0
                : counter.count(pattern, at);
    }

    @Override
    public boolean says(int channel, SampleStatus status) {
        return Arrays.stream(numbers[channel]).anyMatch(number -> number.says(status));
    }

    @Override
    public byte[] write(double[] values, @Nullable SampleStatus[] statuses, @Nullable String[] words) {
        byte[] frame = grown(withWords(tagged(conditioned(pattern.clone(), statuses, words), statuses, words), words));
        @Nullable String complaint = locate(frame);
        if (complaint != null) {
            throw new IllegalArgumentException("no frame can hold this: " + complaint);
        }
        for (int i = 0; i < fields.size(); i++) {
            if (fields.get(i).content() instanceof Field.Literal literal && places.starts[i] >= 0) {
                byte[] bytes = literal.bytes().toBytes();
                System.arraycopy(bytes, 0, frame, places.starts[i], bytes.length);
            }
        }
        for (int i = 0; i < numbers.length; i++) {
            @Nullable SampleStatus status = statuses[i];
            if (status != null) {
                channel(i, values[i], status, frame);
            }
        }
        finish(frame);
        return frame;
    }

    private void channel(int channel, double value, SampleStatus status, byte[] frame) {
        int[] candidates = contents.fieldsOf(channel);
        for (int i = 0; i < candidates.length; i++) {
            int at = places.starts[candidates[i]];
            if (at >= 0 && numbers[channel][i] instanceof BinaryNumber number) {
                if (status == SampleStatus.OK) {
                    BinaryCodes.write(number, value, frame, at);
                } else {
                    BinaryCodes.writeRaw(
                            number,
                            BinaryCodes.of(number, status)
                                    .orElseThrow(() -> new IllegalArgumentException("no code for " + status)),
                            frame,
                            at);
                }
                return;
            }
        }
        throw new IllegalArgumentException("no field of channel "
                + contents.sources().get(channel).channel().name() + " can be written");
    }

    /** Counter, length and checksum, in this order. */
    private void finish(byte[] frame) {
        int at = counter == null ? -1 : places.starts[counter.field];
        if (counter != null && at >= 0) {
            counter.write(count++, frame, at);
        }
        if (contents.message().framing() instanceof Framing.LengthField field) {
            RawBits.writeBits(frame.length - field.adds(), frame, field.at(), field.wire());
        }
        if (checksum != null) {
            checksum.write(frame, 0, frame.length);
        }
    }

    private @Nullable String locate(byte[] frame) {
        return places.find(frame, 0, frame.length - checksumBytes, frame.length);
    }

    /** The frame with the fields that others depend on set so that it holds what is wanted. */
    private byte[] conditioned(byte[] frame, @Nullable SampleStatus[] statuses, @Nullable String[] words) {
        locate(frame);
        int[] starts = places.starts.clone();
        ConditionChoice choice = new ConditionChoice(fields);
        for (int i = 0; i < statuses.length; i++) {
            if (statuses[i] == null) {
                choice.refuse(contents.fieldsOf(i));
            } else {
                choice.want(contents.fieldsOf(i), field -> starts[field] >= 0);
            }
        }
        for (int i = 0; i < words.length; i++) {
            if (words[i] != null) {
                choice.want(new int[] {contents.factFields()[i]}, field -> starts[field] >= 0);
            }
        }
        Map<Integer, Long> solved = choice.solved(field -> raw(field, frame, starts));
        solved.forEach((field, raw) -> {
            if (starts[field] >= 0 && fields.get(field).content() instanceof Field.Binary binary) {
                BinaryCodes.writeRaw(new BinaryNumber(binary, 1), raw, frame, starts[field]);
            }
        });
        return frame;
    }

    private @Nullable Long raw(int field, byte[] frame, int[] starts) {
        return starts[field] >= 0 && fields.get(field).content() instanceof Field.Binary binary
                ? new BinaryNumber(binary, 1).raw(frame, starts[field])
                : null;
    }

    /** The frame with the tagged values that it must hold, and without those that it must not. */
    private byte[] tagged(byte[] frame, @Nullable SampleStatus[] statuses, @Nullable String[] words) {
        if (walk == null) {
            return frame;
        }
        TaggedFrame values = new TaggedFrame(walk, frame, frame.length - checksumBytes);
        // The last of several values with one tag first, so that the places of the others hold.
        IntStream.range(0, statuses.length)
                .filter(i -> statuses[i] == null)
                .flatMap(i -> Arrays.stream(contents.fieldsOf(i)))
                .mapToObj(field -> fields.get(field).place())
                .filter(Field.ByTag.class::isInstance)
                .map(Field.ByTag.class::cast)
                .sorted((one, other) -> Integer.compare(other.nth(), one.nth()))
                .forEach(values::remove);
        for (int i = 0; i < statuses.length; i++) {
            if (statuses[i] != null) {
                hold(contents.fieldsOf(i), values);
            }
        }
        for (int i = 0; i < words.length; i++) {
            @Nullable String said = words[i];
            Field field = fields.get(contents.factFields()[i]);
            if (said != null && field.place() instanceof Field.ByTag place) {
                values.add(place, place.offset());
                values.put(place, said.getBytes(StandardCharsets.UTF_8), FieldPlaces.size(field.content()));
            }
        }
        for (int i = 0; i < statuses.length; i++) {
            if (statuses[i] == null) {
                leftOut(contents.fieldsOf(i), values);
            }
        }
        return withChecksumRoom(values.bytes());
    }

    /** A second value with a tag needs a first one, wanted or not. */
    private void leftOut(int[] candidates, TaggedFrame values) {
        for (int candidate : candidates) {
            Field field = fields.get(candidate);
            if (field.place() instanceof Field.ByTag place && field.when().isEmpty() && values.holds(place)) {
                throw new IllegalArgumentException(
                        "no frame can leave out " + field.name() + " and hold what comes after it under the same tag");
            }
        }
    }

    private void hold(int[] candidates, TaggedFrame values) {
        for (int candidate : candidates) {
            if (!(fields.get(candidate).place() instanceof Field.ByTag place) || values.holds(place)) {
                return;
            }
        }
        Field first = fields.get(candidates[0]);
        Field.ByTag place = (Field.ByTag) first.place();
        values.add(place, place.offset() + FieldPlaces.size(first.content()));
    }

    private byte[] withChecksumRoom(byte[] body) {
        return Arrays.copyOf(body, body.length + checksumBytes);
    }

    /** The frame with characters at offsets. */
    private byte[] withWords(byte[] frame, @Nullable String[] words) {
        byte[] result = frame;
        for (int i = 0; i < words.length; i++) {
            @Nullable String said = words[i];
            Field field = fields.get(contents.factFields()[i]);
            if (said != null && field.place() instanceof Field.AtByte at) {
                byte[] bytes = said.getBytes(StandardCharsets.UTF_8);
                int size = FieldPlaces.size(field.content());
                if (size > 0 && bytes.length > size) {
                    throw new IllegalArgumentException(
                            field.name() + " has room for " + size + " bytes, got " + bytes.length);
                }
                int body = size > 0
                        ? Math.max(result.length - checksumBytes, at.offset() + size)
                        : at.offset() + bytes.length;
                result = withChecksumRoom(Arrays.copyOf(result, body));
                Arrays.fill(result, at.offset(), size > 0 ? at.offset() + size : body, (byte) 0);
                System.arraycopy(bytes, 0, result, at.offset(), bytes.length);
            }
        }
        return result;
    }

    /** The frame with room for all fields at offsets that must stand in it. */
    private byte[] grown(byte[] frame) {
        if (contents.message().framing() instanceof Framing.Fixed) {
            return frame;
        }
        locate(frame);
        int body = frame.length - checksumBytes;
        for (int i = 0; i < fields.size(); i++) {
            if (fields.get(i).place() instanceof Field.AtByte at && places.starts[i] >= 0) {
                body = Math.max(
                        body, at.offset() + FieldPlaces.size(fields.get(i).content()));
            }
        }
        return body == frame.length - checksumBytes ? frame : withChecksumRoom(Arrays.copyOf(frame, body));
    }

    /** A frame with its start, and nothing else. */
    private byte[] blank() {
        Framing framing = contents.message().framing();
        int least = contents.leastBytes();
        if (framing instanceof Framing.LengthField field) {
            byte[] frame = new byte[Math.max(least, field.headerBytes())];
            System.arraycopy(field.start().toBytes(), 0, frame, 0, field.start().length());
            return frame;
        }
        if (framing instanceof Framing.Fixed fixed) {
            byte[] frame = new byte[fixed.maximumBytes()];
            System.arraycopy(fixed.start().toBytes(), 0, frame, 0, fixed.start().length());
            return frame;
        }
        // Bytes beyond would stand behind the tagged values for ever.
        return new byte[walk == null ? Math.max(1, least) : least];
    }
}
