package settlemark.codec;

import java.util.List;

/** Blocks whose digests are right whatever their columns hold, so that the columns themselves are read. */
public final class SignedColumns {
    private SignedColumns() {}

    /** One channel of so many rows, out of bytes that need be no columns. */
    public static byte[] of(int rows, byte[] shared, byte[] column) {
        ColumnSet.DraftChannel channel = new ColumnSet.DraftChannel(0, 0, column);
        return ColumnSet.write(List.of(new ColumnSet.Draft(rows, 0, 10, shared, List.of(channel))));
    }
}
