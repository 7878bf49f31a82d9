package settlemark.codec;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Rows of a number, a time, three small numbers and bytes as checked bytes; the bytes of all rows are deflated as one. */
public final class PackedRows {
    /** More bytes are not unpacked: a damaged block must not ask for all memory. */
    private static final int MOST_BYTES = 1 << 28;

    private PackedRows() {}

    /**
     * One row.
     *
     * @param sequence ascending
     * @param timeNanos any
     * @param kind any, and {@code probe} and {@code input} too
     * @param content its bytes
     */
    public record Row(long sequence, long timeNanos, int kind, int probe, int input, byte[] content) {}

    /** Packs rows well or, where they are soon packed again, quickly. */
    public static byte[] pack(List<Row> rows, boolean quickly) {
        if (rows.isEmpty()) {
            return ColumnSet.write(List.of());
        }
        int count = rows.size();
        long[] times = new long[count];
        long[][] numbers = new long[5][count];
        int size = 0;
        for (int i = 0; i < count; i++) {
            Row row = rows.get(i);
            times[i] = row.timeNanos;
            numbers[0][i] = row.sequence;
            numbers[1][i] = row.kind;
            numbers[2][i] = row.probe;
            numbers[3][i] = row.input;
            numbers[4][i] = row.content.length;
            size += row.content.length;
        }
        Effort effort = quickly ? Effort.QUICK : Effort.THOROUGH;
        BitWriter shared = new BitWriter();
        TimeColumn.write(shared, times, effort);
        List<ColumnSet.DraftChannel> columns = new ArrayList<>();
        for (long[] column : numbers) {
            BitWriter packed = new BitWriter();
            IntegerColumn.write(packed, column, effort);
            columns.add(new ColumnSet.DraftChannel(0, columns.size(), packed.bytes()));
        }
        columns.add(new ColumnSet.DraftChannel(0, columns.size(), Deflated.pack(contents(rows, size), quickly)));
        long low = Arrays.stream(times).min().orElseThrow();
        long high = Arrays.stream(times).max().orElseThrow();
        return ColumnSet.write(List.of(new ColumnSet.Draft(count, low, high, shared.bytes(), columns)));
    }

    private static byte[] contents(List<Row> rows, int size) {
        byte[] all = new byte[size];
        int at = 0;
        for (Row row : rows) {
            System.arraycopy(row.content, 0, all, at, row.content.length);
            at += row.content.length;
        }
        return all;
    }

    /** @throws IllegalArgumentException where the bytes are no rows, or are damaged */
    public static List<Row> unpack(byte[] bytes) {
        ColumnSet set = ColumnSet.read(bytes);
        if (set.tables().isEmpty()) {
            return List.of();
        }
        ColumnSet.Table table = set.tables().get(0);
        if (set.tables().size() != 1 || table.channels().size() != 6) {
            throw new IllegalArgumentException("a block of rows has other columns");
        }
        int count = table.rows();
        BitReader shared = set.column(table.shared());
        long[] times = TimeColumn.open(shared, count).range(0, count);
        shared.finish();
        long[][] numbers = new long[5][];
        for (int i = 0; i < numbers.length; i++) {
            BitReader in = set.column(table.channels().get(i).column());
            numbers[i] = IntegerColumn.read(in, count);
            in.finish();
        }
        byte[] packed = set.bytes(table.channels().get(5).column());
        byte[] contents = Deflated.unpack(packed, size(numbers[4]));
        List<Row> rows = new ArrayList<>(count);
        int at = 0;
        for (int i = 0; i < count; i++) {
            int end = at + (int) numbers[4][i];
            byte[] content = Arrays.copyOfRange(contents, at, end);
            rows.add(new Row(
                    numbers[0][i], times[i], (int) numbers[1][i], (int) numbers[2][i], (int) numbers[3][i], content));
            at = end;
        }
        return rows;
    }

    private static int size(long[] lengths) {
        long size = 0;
        for (long length : lengths) {
            size += length;
            if (length < 0 || size > MOST_BYTES) {
                throw new IllegalArgumentException("rows of more than " + MOST_BYTES + " bytes");
            }
        }
        return (int) size;
    }
}
