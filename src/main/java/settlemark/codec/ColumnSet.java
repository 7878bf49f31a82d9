package settlemark.codec;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Tables of columns as bytes: a head with the place and length of everything, and then the columns, head and columns each
 * with a {@link Digest}. The first column of a table is shared by its channels.
 *
 * <p>Head: its length with its digest (4 bytes), form (1 byte), number of tables; of each the rows, first and last time,
 * length of the shared column, number of channels, and of each channel its probe, its number and the length of its
 * column. Columns are numbered through from 0; a column's digest is of its number too.
 */
final class ColumnSet {
    /** More rows in a table are not read: a damaged head must not ask for all memory. */
    static final int MOST_ROWS = 1 << 20;

    private static final int MOST_COLUMNS = 1 << 16;
    private static final int FORM = 1;
    private static final int OF_HEAD = -1;

    private final byte[] bytes;
    private final List<Table> tables;

    private ColumnSet(byte[] bytes, List<Table> tables) {
        this.bytes = bytes;
        this.tables = List.copyOf(tables);
    }

    /** Where a column lies. */
    record Place(int number, int from, int length) {}

    record Channel(int probe, int channel, Place column) {}

    record Table(int rows, long low, long high, Place shared, List<Channel> channels) {}

    /** A table that is being put together; columns are without their digests. */
    record Draft(int rows, long low, long high, byte[] shared, List<DraftChannel> channels) {}

    record DraftChannel(int probe, int channel, byte[] column) {}

    List<Table> tables() {
        return tables;
    }

    static byte[] write(List<Draft> tables) {
        BitWriter head = new BitWriter();
        head.bits(FORM, 8);
        head.number(tables.size());
        ByteArrayOutputStream columns = new ByteArrayOutputStream();
        int number = 0;
        for (Draft table : tables) {
            head.number(table.rows);
            head.signed(table.low);
            head.number(table.high - table.low);
            head.number(table.shared.length);
            head.number(table.channels.size());
            columns.writeBytes(Digest.sign(table.shared, number++));
            for (DraftChannel channel : table.channels) {
                head.number(channel.probe);
                head.number(channel.channel);
                head.number(channel.column.length);
                columns.writeBytes(Digest.sign(channel.column, number++));
            }
        }
        byte[] signed = Digest.sign(head.bytes(), OF_HEAD);
        BitWriter length = new BitWriter();
        length.bits(signed.length, Integer.SIZE);
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        all.writeBytes(length.bytes());
        all.writeBytes(signed);
        all.writeBytes(columns.toByteArray());
        return all.toByteArray();
    }

    /** @throws IllegalArgumentException where the bytes are not such a set, or the head is damaged */
    static ColumnSet read(byte[] bytes) {
        int length = bytes.length < Integer.BYTES ? 0 : (int) new BitReader(bytes, 0, Integer.BYTES).bits(Integer.SIZE);
        if (length < Digest.BYTES || length > bytes.length - Integer.BYTES) {
            throw new IllegalArgumentException("a block of " + bytes.length + " bytes has no head");
        }
        int headLength = length - Digest.BYTES;
        if (!Digest.signed(bytes, Integer.BYTES, headLength, OF_HEAD)) {
            throw new IllegalArgumentException("the digest of a block's head is not that of its content");
        }
        BitReader head = new BitReader(bytes, Integer.BYTES, headLength);
        if (head.bits(8) != FORM) {
            throw new IllegalArgumentException("a block of an unknown form");
        }
        Places places = new Places(Integer.BYTES + length, bytes.length);
        int count = head.number(MOST_COLUMNS, "the number of tables");
        List<Table> tables = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            tables.add(table(head, places));
        }
        head.finish();
        places.finish();
        return new ColumnSet(bytes, tables);
    }

    private static Table table(BitReader head, Places places) {
        int rows = head.number(MOST_ROWS, "the number of rows");
        long low = head.signed();
        long high = low + head.number();
        if (rows == 0 || high < low) {
            throw new IllegalArgumentException("a table of " + rows + " rows from " + low + " to " + high);
        }
        int length = head.number(places.left(), "a column's length");
        int count = head.number(MOST_COLUMNS, "the number of channels");
        Place shared = places.next(length);
        List<Channel> channels = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int probe = head.number(Integer.MAX_VALUE, "a probe");
            int channel = head.number(Integer.MAX_VALUE, "a channel");
            channels.add(new Channel(probe, channel, places.next(head.number(places.left(), "a column's length"))));
        }
        return new Table(rows, low, high, shared, List.copyOf(channels));
    }

    /** Gives the columns their places, one behind the other. */
    private static final class Places {
        private final int end;
        private int from;
        private int number;

        Places(int from, int end) {
            this.from = from;
            this.end = end;
        }

        int left() {
            return Math.max(0, end - from - Digest.BYTES);
        }

        Place next(int length) {
            Place place = new Place(number++, from, length);
            from += length + Digest.BYTES;
            if (from > end) {
                throw wrongLength();
            }
            return place;
        }

        void finish() {
            if (from != end) {
                throw wrongLength();
            }
        }

        private static IllegalArgumentException wrongLength() {
            return new IllegalArgumentException("a block's columns are not as long as its head says");
        }
    }

    /** @throws IllegalArgumentException where it is damaged */
    BitReader column(Place place) {
        check(place);
        return new BitReader(bytes, place.from, place.length);
    }

    /** @throws IllegalArgumentException where it is damaged */
    byte[] bytes(Place place) {
        check(place);
        return Arrays.copyOfRange(bytes, place.from, place.from + place.length);
    }

    private void check(Place place) {
        if (!Digest.signed(bytes, place.from, place.length, place.number)) {
            throw new IllegalArgumentException("the digest of a column is not that of its content");
        }
    }
}
