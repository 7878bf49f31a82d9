package settlemark.store;

import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import settlemark.codec.PackedRows;
import settlemark.session.SampleBlock;
import settlemark.session.StoreException;

/**
 * Moves what format 2 kept in a row for each event, and in a block for each channel and commit, into frames and sealed
 * blocks, commit by commit.
 */
final class FormerResults {
    private static final String BATCHES =
            "SELECT number, next_sequence, until_nanos FROM former_{t}batch" + " WHERE {key} = ? ORDER BY number";
    private static final String BLOCKS =
            "SELECT probe, channel, block FROM former_{t}sample_block WHERE {key} = ? AND batch = ? ORDER BY part";
    private static final String EVENTS = "SELECT sequence, kind, time_nanos, probe, bytes, detail FROM former_event"
            + " WHERE session = ? AND sequence >= ? AND sequence < ? ORDER BY sequence";
    private static final String ENDED = "SELECT ended_nanos IS NOT NULL FROM session WHERE number = ?";
    private static final String COMPLETE = "SELECT complete FROM rereading WHERE id = ?";

    private final Connection connection;
    private final Failures failures;

    FormerResults(Connection connection, Failures failures) {
        this.connection = connection;
        this.failures = failures;
    }

    void move() throws SQLException, StoreException {
        for (long session : keys("SELECT number FROM session ORDER BY number")) {
            move(Results.OF_THE_DAY, session, ENDED);
        }
        for (long rereading : keys("SELECT id FROM rereading ORDER BY id")) {
            move(Results.OF_A_REREADING, rereading, COMPLETE);
        }
        Connections.run(connection, "DROP TABLE former_event");
        for (Results results : Results.values()) {
            Connections.run(connection, results.sql("DROP TABLE former_{t}sample_block"));
            Connections.run(connection, results.sql("DROP TABLE former_{t}batch"));
        }
    }

    private List<Long> keys(String query) throws SQLException {
        List<Long> keys = new ArrayList<>();
        try (PreparedStatement select = connection.prepareStatement(query);
                ResultSet row = select.executeQuery()) {
            while (row.next()) {
                keys.add(row.getLong(1));
            }
        }
        return keys;
    }

    private void move(Results results, long key, String done) throws SQLException, StoreException {
        Series series = Series.read(connection, failures, results, key, Runnable::run);
        try (PreparedStatement select = connection.prepareStatement(results.sql(BATCHES));
                Statements statements = new Statements(connection)) {
            select.setLong(1, key);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    long next = row.getLong(2);
                    List<PackedRows.Row> events =
                            results == Results.OF_THE_DAY ? events(key, series.nextSequence(), next) : List.of();
                    List<SampleBlock> samples = blocks(results, key, row.getLong(1));
                    series.append(statements, failures, samples, events, next, row.getLong(3));
                }
            }
            if (ResultReader.count(connection, done, key) == 1) {
                series.end(statements, failures);
            }
        }
    }

    private List<SampleBlock> blocks(Results results, long key, long batch) throws SQLException, StoreException {
        List<SampleBlock> blocks = new ArrayList<>();
        try (PreparedStatement select = connection.prepareStatement(results.sql(BLOCKS))) {
            select.setLong(1, key);
            select.setLong(2, batch);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    int probe = row.getInt(1);
                    int channel = row.getInt(2);
                    byte[] block = row.getBytes(3);
                    String what = "samples of " + results.name(key) + ", probe " + probe + ", channel " + channel
                            + ", batch " + batch;
                    blocks.add(failures.decode(what, () -> FormerBlocks.unpack(probe, channel, block)));
                }
            }
        }
        return blocks;
    }

    private List<PackedRows.Row> events(long session, long from, long to) throws SQLException, StoreException {
        List<PackedRows.Row> events = new ArrayList<>();
        try (PreparedStatement select = connection.prepareStatement(EVENTS)) {
            select.setLong(1, session);
            select.setLong(2, from);
            select.setLong(3, to);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    events.add(event(row));
                }
            }
        }
        if (events.size() != to - from) {
            throw failures.damaged("is damaged: of session " + session + " there are " + events.size()
                    + " of the events " + from + " to " + (to - 1));
        }
        return events;
    }

    /** The detail of bytes was the number of their input, NULL for input 0. */
    private static PackedRows.Row event(ResultSet row) throws SQLException {
        int probe = row.getInt(4);
        int stored = row.wasNull() ? 0 : probe + 1;
        byte @Nullable [] bytes = row.getBytes(5);
        @Nullable String detail = row.getString(6);
        int input = bytes == null || detail == null ? 0 : Integer.parseInt(detail);
        byte[] content = bytes != null ? bytes : detail == null ? new byte[0] : detail.getBytes(StandardCharsets.UTF_8);
        return new PackedRows.Row(row.getLong(1), row.getLong(3), row.getInt(2), stored, input, content);
    }
}
