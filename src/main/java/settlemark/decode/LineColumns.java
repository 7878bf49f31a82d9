package settlemark.decode;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import settlemark.profile.Field;
import settlemark.profile.Framing;

/** Cuts a line into columns, without the blanks around them. Not safe for two threads. */
final class LineColumns {
    private final Framing.Columns columns;
    private final int needed;
    private int[] starts = new int[16];
    private int[] ends = new int[16];
    private int count;

    LineColumns(Framing.Columns columns, List<Field> fields) {
        this.columns = columns;
        int last = -1;
        for (Field field : fields) {
            last = field.place() instanceof Field.InColumn column ? Math.max(last, column.index()) : last;
        }
        needed = last + 1;
    }

    /** Columns that a line must have at least. */
    int needed() {
        return Math.max(needed, columns.count());
    }

    int start(int column) {
        return starts[column];
    }

    int end(int column) {
        return ends[column];
    }

    /** Cuts a line; null where it has as many columns as it must, else how many it has. */
    @Nullable
    String cut(byte[] line, int from, int to) {
        count = 0;
        if (columns.separator() == ' ') {
            cutAtBlanks(line, from, to);
        } else {
            cutAtSeparators(line, from, to);
        }
        if (columns.count() > 0 ? count != columns.count() : count < needed) {
            return "the line has " + count + " columns where " + (columns.count() > 0 ? "" : "at least ") + needed()
                    + " are expected: " + Ascii.quoted(line, from, to);
        }
        return null;
    }

    private void cutAtSeparators(byte[] line, int from, int to) {
        int start = from;
        for (int i = from; i <= to; i++) {
            if (i == to || line[i] == columns.separator()) {
                column(line, start, i);
                start = i + 1;
            }
        }
    }

    private void cutAtBlanks(byte[] line, int from, int to) {
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
        if (count == starts.length) {
            starts = Arrays.copyOf(starts, 2 * count);
            ends = Arrays.copyOf(ends, 2 * count);
        }
        starts[count] = Ascii.skipBlanks(line, from, to);
        ends[count] = Ascii.dropBlanks(line, starts[count], to);
        count++;
    }
}
