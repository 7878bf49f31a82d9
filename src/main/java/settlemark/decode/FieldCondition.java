package settlemark.decode;

import java.util.List;
import org.jspecify.annotations.Nullable;
import settlemark.profile.Field;

/**
 * Whether a field stands in a frame, by the raw number of another one.
 *
 * @param field index of the other field
 * @param number how it is read
 * @param raws any of these
 */
record FieldCondition(int field, FieldNumber number, long[] raws) {
    /** The condition of a field, null where it stands in every frame. */
    static @Nullable FieldCondition of(Field field, List<Field> fields) {
        if (field.when().isEmpty()) {
            return null;
        }
        Field.Condition when = field.when().get();
        long[] raws = when.raws().stream().mapToLong(Long::longValue).toArray();
        return new FieldCondition(when.field(), FieldNumber.of(fields.get(when.field()), 1), raws);
    }

    /** Whether it holds, where the other field is found already. */
    boolean holds(byte[] bytes, int[] starts, int[] ends) {
        return starts[field] >= 0 && number.isOneOf(raws, bytes, starts[field], ends[field]);
    }
}
