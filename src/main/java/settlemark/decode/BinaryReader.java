package settlemark.decode;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import settlemark.profile.Field;

/**
 * Reads binary frames in which everything stands at its offset, which most are. Makes no object for a good frame, and
 * walks no list.
 */
final class BinaryReader implements FrameReader {
    private final int leastBytes;
    private final @Nullable ChecksumCheck checksum;
    private final FixedBytes[] constants;
    private final BinaryNumber[] numbers;
    private final int[] offsets;
    private final @Nullable FrameCounter counter;
    private final int counterOffset;
    private long missed;

    BinaryReader(Contents contents) {
        leastBytes = contents.leastBytes();
        checksum = contents.message().checksum().map(ChecksumCheck::new).orElse(null);
        constants = constants(contents);
        numbers = new BinaryNumber[contents.sources().size()];
        offsets = new int[numbers.length];
        for (int i = 0; i < numbers.length; i++) {
            Field field = contents.field(contents.fieldsOf(i)[0]);
            numbers[i] = new BinaryNumber(
                    (Field.Binary) field.content(), contents.sources().get(i).sign());
            offsets[i] = offset(field);
        }
        counter = FrameCounter.of(contents.message());
        counterOffset = counter == null ? 0 : offset(contents.field(counter.field));
    }

    /** Whether frames are as simple as this reader needs them. */
    static boolean reads(Contents contents) {
        boolean placed = contents.message().fields().stream()
                .allMatch(field -> field.place() instanceof Field.AtByte
                        && field.when().isEmpty()
                        && (field.content() instanceof Field.Binary || field.content() instanceof Field.Literal));
        return placed
                && contents.message().tagged().isEmpty()
                && !contents.isText()
                && contents.sources().stream()
                        .allMatch(source -> source.fields().size() == 1);
    }

    private static int offset(Field field) {
        return ((Field.AtByte) field.place()).offset();
    }

    private static FixedBytes[] constants(Contents contents) {
        List<FixedBytes> constants = new ArrayList<>();
        List<Field> fields = contents.message().fields();
        for (int i = 0; i < fields.size(); i++) {
            if (fields.get(i).content() instanceof Field.Literal literal) {
                constants.add(new FixedBytes(
                        fields.get(i).name(),
                        i,
                        offset(fields.get(i)),
                        literal.bytes().toBytes(),
                        false));
            }
        }
        return constants.toArray(FixedBytes[]::new);
    }

    @Override
    public @Nullable String read(byte[] bytes, int from, int to, FrameValues out) {
        if (to - from < leastBytes) {
            return "the frame has " + (to - from) + " bytes where the fields need " + leastBytes;
        }
        if (checksum != null) {
            @Nullable String complaint = checksum.complaint(bytes, from, to);
            if (complaint != null) {
                return complaint;
            }
        }
        for (FixedBytes constant : constants) {
            int at = from + constant.offset();
            if (!constant.standAt(bytes, at)) {
                return constant.complaint(bytes, at, at + constant.bytes().length);
            }
        }
        for (int i = 0; i < numbers.length; i++) {
            numbers[i].read(bytes, from + offsets[i], i, out);
        }
        missed = counter == null ? 0 : counter.missed(bytes, from + counterOffset);
        return null;
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
}
