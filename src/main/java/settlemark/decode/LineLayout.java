package settlemark.decode;

import com.google.re2j.Matcher;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import settlemark.profile.Field;
import settlemark.profile.Framing;
import settlemark.profile.Profile;

/** Finds the fields of a line. Not safe for two threads: the places found last are kept here. */
final class LineLayout {
    /** By field: where it was found, end exclusive. */
    final int[] starts;

    final int[] ends;
    private final List<Field> fields;
    private final Framing.@Nullable Columns columns;
    private final int needed;
    private int[] columnStarts = new int[16];
    private int[] columnEnds = new int[16];
    private int count;

    LineLayout(Profile profile) {
        fields = profile.messages().get(0).fields();
        columns = profile.messages().get(0).columns().orElse(null);
        starts = new int[fields.size()];
        ends = new int[fields.size()];
        int last = -1;
        for (Field field : fields) {
            last = field.place() instanceof Field.InColumn column ? Math.max(last, column.index()) : last;
        }
        needed = last + 1;
    }

    /** Columns that a line must have at least. */
    int neededColumns() {
        return columns == null ? 0 : Math.max(needed, columns.count());
    }

    /** Finds all fields; null where all are there, else what is missing. */
    @Nullable
    String find(byte[] line, int from, int to) {
        if (columns != null) {
            split(line, from, to, columns.separator());
            if (columns.count() > 0 ? count != columns.count() : count < needed) {
                return "the line has " + count + " columns where " + (columns.count() > 0 ? "" : "at least ")
                        + neededColumns() + " are expected: " + Ascii.quoted(line, from, to);
            }
        }
        byte @Nullable [] text = null;
        for (int i = 0; i < starts.length; i++) {
            Field.Place place = fields.get(i).place();
            if (place instanceof Field.InColumn column) {
                starts[i] = columnStarts[column.index()];
                ends[i] = columnEnds[column.index()];
            } else if (place instanceof Field.ByPattern pattern) {
                text = text == null ? Arrays.copyOfRange(line, from, to) : text;
                Matcher matcher = pattern.pattern().matcher(text);
                if (!matcher.find() || matcher.start(1) < 0) {
                    return fields.get(i).name() + " was not found by its pattern in " + Ascii.quoted(line, from, to);
                }
                starts[i] = Ascii.skipBlanks(line, from + matcher.start(1), from + matcher.end(1));
                ends[i] = Ascii.dropBlanks(line, starts[i], from + matcher.end(1));
            }
        }
        return null;
    }

    private void split(byte[] line, int from, int to, char separator) {
        count = 0;
        if (separator == ' ') {
            splitAtBlanks(line, from, to);
            return;
        }
        int start = from;
        for (int i = from; i <= to; i++) {
            if (i == to || line[i] == separator) {
                column(line, start, i);
                start = i + 1;
            }
        }
    }

    private void splitAtBlanks(byte[] line, int from, int to) {
        int i = from;
        while (i < to) {
            while (i < to && Ascii.isBlank(line[i])) {
                i++;
            }
            int start = i;
            while (i < to && !Ascii.isBlank(line[i])) {
                i++;
            }
            if (i > start) {
                column(line, start, i);
            }
        }
    }

    private void column(byte[] line, int from, int to) {
        if (count == columnStarts.length) {
            columnStarts = Arrays.copyOf(columnStarts, 2 * count);
            columnEnds = Arrays.copyOf(columnEnds, 2 * count);
        }
        columnStarts[count] = Ascii.skipBlanks(line, from, to);
        columnEnds[count] = Ascii.dropBlanks(line, columnStarts[count], to);
        count++;
    }
}
