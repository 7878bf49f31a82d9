package settlemark.store;

import java.util.List;
import settlemark.codec.PackedRows;

/**
 * A block of events as it is stored.
 *
 * @param firstSequence of the first
 * @param nextSequence behind the last
 * @param lowNanos time of the earliest
 * @param highNanos time of the latest
 * @param block packed events
 */
record SealedEvents(long firstSequence, long nextSequence, long lowNanos, long highNanos, byte[] block) {
    /** @param rows at least one */
    static SealedEvents pack(List<PackedRows.Row> rows) {
        long low = Long.MAX_VALUE;
        long high = Long.MIN_VALUE;
        for (PackedRows.Row row : rows) {
            low = Math.min(low, row.timeNanos());
            high = Math.max(high, row.timeNanos());
        }
        return new SealedEvents(
                rows.get(0).sequence(),
                rows.get(rows.size() - 1).sequence() + 1,
                low,
                high,
                PackedRows.pack(rows, false));
    }
}
