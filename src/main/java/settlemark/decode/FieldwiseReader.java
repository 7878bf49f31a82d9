package settlemark.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import settlemark.profile.Field;

/** Reads frames of any layout: finds all fields first, then reads the channels and facts out of those that stand there. */
final class FieldwiseReader implements FrameReader {
    private final Contents contents;
    private final FieldPlaces places;
    private final boolean text;
    private final int leastBytes;
    private final @Nullable ChecksumCheck checksum;
    private final FixedBytes[] literals;
    /** By channel: the fields that may give its value, and how they are read. */
    private final int[][] fields;

    private final FieldNumber[][] numbers;
    private final int[] factFields;
    private final FactWords[] factWords;
    private final @Nullable FrameCounter counter;
    private long missed;

    FieldwiseReader(Contents contents) {
        this.contents = contents;
        places = new FieldPlaces(contents.message());
        text = contents.isText();
        leastBytes = text ? 0 : contents.leastBytes();
        checksum = contents.message().checksum().map(ChecksumCheck::new).orElse(null);
        literals = literals(contents.message().fields(), text);
        int channels = contents.sources().size();
        fields = new int[channels][];
        numbers = new FieldNumber[channels][];
        for (int i = 0; i < channels; i++) {
            int sign = contents.sources().get(i).sign();
            fields[i] = contents.fieldsOf(i);
            numbers[i] = Arrays.stream(fields[i])
                    .mapToObj(field -> FieldNumber.of(contents.field(field), sign))
                    .toArray(FieldNumber[]::new);
        }
        factFields = contents.factFields();
        factWords = new FactWords[factFields.length];
        Arrays.setAll(factWords, i -> new FactWords());
        counter = FrameCounter.of(contents.message());
    }

    private static FixedBytes[] literals(List<Field> fields, boolean text) {
        List<FixedBytes> literals = new ArrayList<>();
        for (int i = 0; i < fields.size(); i++) {
            if (fields.get(i).content() instanceof Field.Literal literal) {
                literals.add(new FixedBytes(
                        fields.get(i).name(), i, 0, literal.bytes().toBytes(), text));
            }
        }
        return literals.toArray(FixedBytes[]::new);
    }

    @Override
    public @Nullable String read(byte[] bytes, int from, int to, FrameValues out) {
        if (to - from < leastBytes) {
            return "the frame has " + (to - from) + " bytes where the fields need " + leastBytes;
        }
        int end = checksum != null && text ? Ascii.dropBlanks(bytes, from, to) : to;
        @Nullable String complaint = checksum == null ? null : checksum.complaint(bytes, from, end);
        if (complaint == null) {
            complaint = places.find(bytes, from, end - contents.checksumBytes(), end);
        }
        if (complaint == null) {
            complaint = wrongLiteral(bytes);
        }
        if (complaint == null) {
            complaint = numbers(bytes, out);
        }
        if (complaint == null) {
            facts(bytes, out);
            count(bytes);
        }
        return complaint;
    }

    /** Where the fields of the last frame stand. */
    FieldPlaces places() {
        return places;
    }

    @Override
    public long missed() {
        return missed;
    }

    @Override
    public void reset() {
        missed = 0;
        if (counter != null) {
            counter.reset();
        }
    }

    private @Nullable String wrongLiteral(byte[] bytes) {
        for (FixedBytes literal : literals) {
            int from = places.starts[literal.field()];
            int to = places.ends[literal.field()];
            if (from >= 0 && !(to - from == literal.bytes().length && literal.standAt(bytes, from))) {
                return literal.complaint(bytes, from, to);
            }
        }
        return null;
    }

    private @Nullable String numbers(byte[] bytes, FrameValues out) {
        for (int i = 0; i < fields.length; i++) {
            int candidate = firstPresent(fields[i]);
            if (candidate < 0) {
                out.absent(i);
                continue;
            }
            int field = fields[i][candidate];
            @Nullable
            String complaint = numbers[i][candidate].read(bytes, places.starts[field], places.ends[field], i, out);
            if (complaint != null) {
                return complaint;
            }
        }
        return null;
    }

    private int firstPresent(int[] candidates) {
        for (int i = 0; i < candidates.length; i++) {
            if (places.starts[candidates[i]] >= 0) {
                return i;
            }
        }
        return -1;
    }

    private void facts(byte[] bytes, FrameValues out) {
        for (int i = 0; i < factFields.length; i++) {
            int from = places.starts[factFields[i]];
            out.words[i] = from < 0 ? null : factWords[i].of(bytes, from, places.ends[factFields[i]]);
        }
    }

    private void count(byte[] bytes) {
        int at = counter == null ? -1 : places.starts[counter.field];
        missed = counter == null || at < 0 ? 0 : counter.missed(bytes, at);
    }
}
