package settlemark.decode;

import org.jspecify.annotations.Nullable;
import settlemark.measure.SampleStatus;
import settlemark.profile.Field;

/** A number of a frame as a channel sees it. */
sealed interface FieldNumber permits BinaryNumber, TextNumber {
    /** The number of a field; the sign is the channel's. */
    static FieldNumber of(Field field, int sign) {
        return field.content() instanceof Field.Decimal decimal
                ? new TextNumber(field.name(), decimal, sign)
                : new BinaryNumber((Field.Binary) field.content(), sign);
    }

    /** Fills in a channel's value; null where that could be done, else why not. */
    @Nullable
    String read(byte[] bytes, int from, int to, int channel, FrameValues out);

    /** Whether the raw number is one of some; false where there is no raw number. */
    boolean isOneOf(long[] raws, byte[] bytes, int from, int to);

    /** Whether there is a code for a status other than OK. */
    boolean says(SampleStatus status);

    /** The raw number for people, with what it is written in. */
    String shownRaw(byte[] bytes, int from, int to);
}
