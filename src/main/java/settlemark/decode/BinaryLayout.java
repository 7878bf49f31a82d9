package settlemark.decode;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import settlemark.profile.ChannelSource;
import settlemark.profile.Field;
import settlemark.profile.Profile;
import settlemark.profile.Wire;

/** Where everything stands in a binary frame, the same for reading and for writing. */
final class BinaryLayout {
    /** By channel. */
    final BinaryNumber[] numbers;

    /** An array, because walking a list would make an object for each frame. */
    final Constant[] constants;

    final @Nullable Counter counter;
    final @Nullable ChecksumCheck checksum;

    BinaryLayout(Profile profile) {
        List<ChannelSource> sources = profile.sources();
        numbers = new BinaryNumber[sources.size()];
        for (int i = 0; i < numbers.length; i++) {
            Field field = profile.messages()
                    .get(0)
                    .fields()
                    .get(sources.get(i).fields().get(0).field());
            Field.Binary content = (Field.Binary) field.content();
            numbers[i] = new BinaryNumber(offset(field), content, sources.get(i).sign());
        }
        List<Constant> literals = new ArrayList<>();
        Counter found = null;
        for (Field field : profile.messages().get(0).fields()) {
            if (field.content() instanceof Field.Literal literal) {
                literals.add(new Constant(
                        field.name(), offset(field), literal.bytes().toBytes()));
            } else if (field.content() instanceof Field.Binary binary && binary.counts()) {
                found = new Counter(offset(field), binary.wire());
            }
        }
        constants = literals.toArray(Constant[]::new);
        counter = found;
        checksum = profile.messages().get(0).checksum().map(ChecksumCheck::new).orElse(null);
    }

    /** Bytes that a frame needs to hold all that is described. */
    int leastBytes() {
        int end = counter == null ? 0 : counter.offset() + counter.wire().bytes();
        for (Constant constant : constants) {
            end = Math.max(end, constant.offset() + constant.bytes().length);
        }
        for (BinaryNumber number : numbers) {
            end = Math.max(end, number.end());
        }
        return end + (checksum == null ? 0 : checksum.bytesAtEnd());
    }

    private static int offset(Field field) {
        return ((Field.AtByte) field.place()).offset();
    }

    /** Bytes that are the same in every frame. */
    record Constant(String name, int offset, byte[] bytes) {
        boolean standsIn(byte[] frame, int from) {
            for (int i = 0; i < bytes.length; i++) {
                if (frame[from + offset + i] != bytes[i]) {
                    return false;
                }
            }
            return true;
        }

        String complaint(byte[] frame, int from) {
            int at = from + offset;
            return name + " must be " + Ascii.hex(bytes, 0, bytes.length) + ", got "
                    + Ascii.hex(frame, at, at + bytes.length);
        }
    }

    /** A number that goes up by one with each frame. */
    record Counter(int offset, Wire wire) {
        long mask() {
            return wire.bytes() == 8 ? Long.MAX_VALUE : (1L << 8 * wire.bytes()) - 1;
        }

        long read(byte[] frame, int from) {
            return RawBits.read(wire, frame, from + offset) & mask();
        }

        void write(long count, byte[] frame, int from) {
            RawBits.write(wire, count & mask(), frame, from + offset);
        }
    }
}
