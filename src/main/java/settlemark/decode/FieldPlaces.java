package settlemark.decode;

import com.google.re2j.Matcher;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import settlemark.profile.Field;
import settlemark.profile.Message;

/** Finds the fields of a frame. Not safe for two threads: the places found last are kept here. */
final class FieldPlaces {
    /** By field: where it was found, -1 where the frame does not hold it. */
    final int[] starts;
    /** By field: after its last byte. */
    final int[] ends;

    private final Field[] fields;
    private final @Nullable FieldCondition[] conditions;
    private final @Nullable LineColumns columns;
    private final @Nullable TaggedFields tagged;
    /** A frame has bytes after its checksum, which fields may name. */
    private final boolean goesOnAfterChecksum;

    private byte @Nullable [] text;

    FieldPlaces(Message message) {
        List<Field> list = message.fields();
        fields = list.toArray(Field[]::new);
        starts = new int[fields.length];
        ends = new int[fields.length];
        conditions = new FieldCondition[fields.length];
        Arrays.setAll(conditions, i -> FieldCondition.of(fields[i], list));
        columns = message.columns().map(c -> new LineColumns(c, list)).orElse(null);
        tagged = message.tagged()
                .map(t -> new TaggedFields(t, list, starts, ends))
                .orElse(null);
        goesOnAfterChecksum = message.checksum().map(c -> c.followedBy() > 0).orElse(false);
    }

    /** Columns that a line must have at least, 0 where it is not cut into columns. */
    int neededColumns() {
        return columns == null ? 0 : columns.needed();
    }

    /**
     * Finds all fields.
     *
     * @param end of what fields may fill, before the checksum
     * @param to end of the frame
     * @return null where all that must be there is, else what is missing
     */
    @Nullable
    String find(byte[] bytes, int from, int end, int to) {
        text = null;
        Arrays.fill(starts, -1);
        @Nullable String complaint = columns == null ? null : columns.cut(bytes, from, end);
        if (complaint == null && tagged != null) {
            complaint = tagged.find(bytes, from, end);
        }
        for (int i = 0; i < fields.length && complaint == null; i++) {
            if (conditions[i] == null) {
                complaint = place(i, bytes, from, end, to);
            }
        }
        return complaint == null ? findDependent(bytes, from, end, to) : complaint;
    }

    /** Goes on where one does not fit, so that all places are known to who makes the frame longer. */
    private @Nullable String findDependent(byte[] bytes, int from, int end, int to) {
        @Nullable String first = null;
        for (int i = 0; i < fields.length; i++) {
            FieldCondition condition = conditions[i];
            if (condition == null) {
                continue;
            }
            if (!condition.holds(bytes, starts, ends)) {
                starts[i] = -1;
                continue;
            }
            @Nullable String complaint = place(i, bytes, from, end, to);
            first = first == null ? complaint : first;
        }
        return first;
    }

    private @Nullable String place(int field, byte[] bytes, int from, int end, int to) {
        Field.Place place = fields[field].place();
        if (place instanceof Field.InColumn column && columns != null) {
            starts[field] = columns.start(column.index());
            ends[field] = columns.end(column.index());
            return null;
        }
        if (place instanceof Field.AtByte at) {
            boolean open = size(fields[field].content()) == 0;
            return range(field, from + at.offset(), from, goesOnAfterChecksum && !open ? to : end);
        }
        if (place instanceof Field.ByTag tag) {
            return starts[field] < 0 ? null : range(field, starts[field] + tag.offset(), from, ends[field]);
        }
        return place instanceof Field.ByPattern pattern ? match(field, pattern, bytes, from, end) : null;
    }

    private @Nullable String range(int field, int start, int from, int limit) {
        int size = size(fields[field].content());
        starts[field] = start;
        ends[field] = size == 0 ? limit : start + size;
        return ends[field] <= limit && start <= limit
                ? null
                : fields[field].name() + " ends at byte " + (Math.max(start, ends[field]) - from) + " where there are "
                        + (limit - from);
    }

    private @Nullable String match(int field, Field.ByPattern pattern, byte[] bytes, int from, int end) {
        byte[] line = text == null ? Arrays.copyOfRange(bytes, from, end) : text;
        text = line;
        Matcher matcher = pattern.pattern().matcher(line);
        if (!matcher.find() || matcher.start(1) < 0) {
            return fields[field].name() + " was not found by its pattern in " + Ascii.quoted(bytes, from, end);
        }
        starts[field] = Ascii.skipBlanks(bytes, from + matcher.start(1), from + matcher.end(1));
        ends[field] = Ascii.dropBlanks(bytes, starts[field], from + matcher.end(1));
        return null;
    }

    /** Bytes of a content, 0 for what goes on to the end of its place. */
    static int size(Field.Content content) {
        if (content instanceof Field.Literal literal) {
            return literal.bytes().length();
        }
        if (content instanceof Field.Binary binary) {
            return binary.wire().bytes();
        }
        return content instanceof Field.Characters characters ? characters.bytes() : 0;
    }
}
