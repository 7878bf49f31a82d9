package settlemark.decode;

import java.util.List;
import org.jspecify.annotations.Nullable;
import settlemark.profile.Field;
import settlemark.profile.Message;
import settlemark.profile.Source;

/** A number that goes up by one with each frame: tells how many were lost. */
final class FrameCounter {
    final int field;
    final BinaryNumber number;
    private final long mask;
    /** An advertisement is sent several times over: the same number again is no loss. */
    private final boolean repeats;

    private long last = -1;

    private FrameCounter(int field, BinaryNumber number, boolean repeats) {
        this.field = field;
        this.number = number;
        this.repeats = repeats;
        this.mask = (number.width >= 64 ? Long.MAX_VALUE : (1L << number.width) - 1) & number.mask;
    }

    static @Nullable FrameCounter of(Message message) {
        List<Field> fields = message.fields();
        for (int i = 0; i < fields.size(); i++) {
            if (fields.get(i).content() instanceof Field.Binary binary && binary.counts()) {
                boolean repeats = message.source() instanceof Source.ServiceData
                        || message.source() instanceof Source.CompanyData;
                return new FrameCounter(i, new BinaryNumber(binary, 1), repeats);
            }
        }
        return null;
    }

    /** Frames lost since the last one, of which this is the number. */
    long missed(byte[] bytes, int at) {
        long count = count(bytes, at);
        long missed = last < 0 || repeats && count == last ? 0 : count - last - 1 & mask;
        last = count;
        return missed;
    }

    long count(byte[] bytes, int at) {
        return number.raw(bytes, at) & mask;
    }

    void write(long count, byte[] bytes, int at) {
        BinaryCodes.writeRaw(number, count & mask, bytes, at);
    }

    void reset() {
        last = -1;
    }
}
