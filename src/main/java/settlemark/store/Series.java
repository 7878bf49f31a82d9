package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import settlemark.codec.PackedRows;
import settlemark.codec.PackedSamples;
import settlemark.session.SampleBlock;
import settlemark.session.StoreException;

/**
 * Where one session or rereading is being written. A commit is a row of {@code frame}; when enough has come together it
 * is sealed in blocks, and one frame with what is left over takes the place of all. The last frame stays when all is
 * sealed, and says how far the series goes. For the writer's thread and within its transactions; after a failed one it is
 * thrown away and read again from the frames.
 */
final class Series {
    private static final int MOST_FRAMES = 256;
    private static final long MOST_FRAME_BYTES = 1 << 20;
    private static final int EVENTS_PER_BLOCK = 4096;
    private static final long EVENT_BYTES_PER_BLOCK = 1 << 16;

    private static final String FRAMES =
            "SELECT number, next_sequence, until_nanos, samples, events FROM {t}frame WHERE {key} = ? ORDER BY number";
    private static final String INSERT = "INSERT INTO {t}frame ({key}, number, next_sequence, until_nanos, samples,"
            + " events) VALUES (?, ?, ?, ?, ?, ?)";
    private static final String DELETE = "DELETE FROM {t}frame WHERE {key} = ?";

    private final Results results;
    private final long key;
    private final OpenPart open = new OpenPart();
    private long number = -1;
    private long nextSequence;
    private long untilNanos;
    private int frames;
    private long frameBytes;

    private Series(Results results, long key) {
        this.results = results;
        this.key = key;
    }

    static Series read(Connection connection, Failures failures, Results results, long key)
            throws SQLException, StoreException {
        Series series = new Series(results, key);
        try (PreparedStatement select = connection.prepareStatement(results.sql(FRAMES))) {
            select.setLong(1, key);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    series.take(row, failures);
                }
            }
        }
        return series;
    }

    private void take(ResultSet row, Failures failures) throws SQLException, StoreException {
        number = row.getLong(1);
        nextSequence = row.getLong(2);
        untilNanos = row.getLong(3);
        byte[] samples = row.getBytes(4);
        byte[] events = row.getBytes(5);
        String what = "what " + results.name(key) + " has gained last, frame " + number;
        open.add(failures.decode(what, () -> blocks(samples)), failures.decode(what, () -> PackedRows.unpack(events)));
        frames++;
    }

    private static List<SampleBlock> blocks(byte[] bytes) {
        PackedSamples packed = PackedSamples.of(bytes);
        return packed.parts().stream().map(packed::read).toList();
    }

    /** Number of the last commit, -1 before the first. */
    long number() {
        return number;
    }

    long nextSequence() {
        return nextSequence;
    }

    /**
     * Adds what a commit brings.
     *
     * @param insert prepared from {@link #insertFrame}
     * @param next sequence number of the next event
     * @param until session time up to which this is everything
     */
    void append(
            Connection connection,
            Failures failures,
            PreparedStatement insert,
            List<SampleBlock> samples,
            List<PackedRows.Row> events,
            long next,
            long until)
            throws SQLException, StoreException {
        number++;
        nextSequence = next;
        untilNanos = until;
        open.add(samples, events);
        if (full()) {
            seal(new Sealing(connection, failures, results, key), Sealing.ROWS);
            replaceFrames(connection, insert);
        } else {
            frames++;
            frameBytes += insert(insert, samples, events);
        }
    }

    /** Seals all that is left. */
    void end(Connection connection, Failures failures, PreparedStatement insert) throws SQLException, StoreException {
        if (number >= 0) {
            seal(new Sealing(connection, failures, results, key), 1);
            replaceFrames(connection, insert);
        }
    }

    private boolean full() {
        return frames >= MOST_FRAMES
                || frameBytes >= MOST_FRAME_BYTES
                || open.events().size() >= EVENTS_PER_BLOCK
                || open.eventBytes() >= EVENT_BYTES_PER_BLOCK
                || open.probes().values().stream().anyMatch(p -> p.rows() >= Sealing.ROWS);
    }

    /** @param least of a probe with fewer samples in every channel nothing is sealed */
    private void seal(Sealing sealing, int least) throws SQLException, StoreException {
        for (Map.Entry<Integer, ProbeColumns> probe : open.probes().entrySet()) {
            ProbeColumns columns = probe.getValue();
            while (columns.rows() >= least) {
                sealing.samples(probe.getKey(), columns.oldest(Sealing.ROWS));
                columns.remove(Sealing.ROWS);
            }
        }
        boolean worth = open.events().size() >= EVENTS_PER_BLOCK / 4 || open.eventBytes() >= EVENT_BYTES_PER_BLOCK / 4;
        if (worth || least == 1) {
            sealEvents(sealing);
        }
    }

    private void sealEvents(Sealing sealing) throws SQLException {
        List<PackedRows.Row> events = open.events();
        int from = 0;
        while (from < events.size()) {
            int to = from;
            long bytes = 0;
            while (to < events.size() && to - from < EVENTS_PER_BLOCK && bytes < 2 * EVENT_BYTES_PER_BLOCK) {
                bytes += events.get(to).content().length;
                to++;
            }
            sealing.events(events.subList(from, to));
            from = to;
        }
        open.removeEvents();
    }

    private void replaceFrames(Connection connection, PreparedStatement insert) throws SQLException {
        try (PreparedStatement delete = connection.prepareStatement(results.sql(DELETE))) {
            delete.setLong(1, key);
            delete.executeUpdate();
        }
        insert(insert, open.samples(), open.events());
        frames = 0;
        frameBytes = 0;
    }

    static PreparedStatement insertFrame(Connection connection, Results results) throws SQLException {
        return connection.prepareStatement(results.sql(INSERT));
    }

    /** Returns how many bytes it takes. */
    private long insert(PreparedStatement insert, List<SampleBlock> samples, List<PackedRows.Row> events)
            throws SQLException {
        byte[] packedSamples = PackedSamples.packQuickly(samples);
        byte[] packedEvents = PackedRows.pack(events, true);
        insert.setLong(1, key);
        insert.setLong(2, number);
        insert.setLong(3, nextSequence);
        insert.setLong(4, untilNanos);
        insert.setBytes(5, packedSamples);
        insert.setBytes(6, packedEvents);
        insert.executeUpdate();
        return (long) packedSamples.length + packedEvents.length;
    }
}
