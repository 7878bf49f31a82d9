package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import settlemark.codec.Groups;
import settlemark.codec.PackedGroups;
import settlemark.codec.PackedRows;
import settlemark.session.SampleBlock;
import settlemark.session.StoreException;

/**
 * Writes blocks that never change again, and the statistics of sample blocks. Those of level 0 lie beside their block, a
 * group for each {@link #SAMPLES_PER_GROUP} samples; each level above it has a row for every {@link #FAN} rows below, with
 * as many groups made one.
 */
final class Sealing {
    /** So many samples of a channel make a block. */
    static final int ROWS = 4096;

    static final int SAMPLES_PER_GROUP = 128;
    static final int FAN = 8;

    private static final String NEXT_BLOCK =
            "SELECT coalesce(max(number) + 1, 0) FROM {t}sample_block WHERE {key} = ? AND probe = ?";
    private static final String INSERT_BLOCK =
            "INSERT INTO {t}sample_block ({key}, probe, number, low_nanos, high_nanos,"
                    + " summary, block) VALUES (?, ?, ?, ?, ?, ?, ?)";
    private static final String INSERT_SUMMARY = "INSERT INTO {t}summary ({key}, probe, level, number, low_nanos,"
            + " high_nanos, block) VALUES (?, ?, ?, ?, ?, ?, ?)";
    private static final String LOWEST = "SELECT summary FROM {t}sample_block WHERE {key} = ? AND probe = ?"
            + " AND number >= ? AND number < ? ORDER BY number";
    private static final String BELOW = "SELECT block FROM {t}summary WHERE {key} = ? AND probe = ?"
            + " AND number >= ? AND number < ? AND level = ? ORDER BY number";
    private static final String INSERT_EVENTS = "INSERT INTO event_block (session, first_sequence, next_sequence,"
            + " low_nanos, high_nanos, block) VALUES (?, ?, ?, ?, ?, ?)";

    private final Statements statements;
    private final Failures failures;
    private final Results results;
    private final long key;

    /** With statements of its own, which go with the connection. */
    Sealing(Connection connection, Failures failures, Results results, long key) {
        this(new Statements(connection), failures, results, key);
    }

    Sealing(Statements statements, Failures failures, Results results, long key) {
        this.statements = statements;
        this.failures = failures;
        this.results = results;
        this.key = key;
    }

    /** @param blocks of one probe, none empty */
    void samples(int probe, List<SampleBlock> blocks) throws SQLException, StoreException {
        samples(SealedSamples.pack(probe, blocks));
    }

    void samples(SealedSamples sealed) throws SQLException, StoreException {
        int probe = sealed.probe();
        long number = nextBlock(probe);
        PreparedStatement insert = statements.of(results.sql(INSERT_BLOCK));
        insert.setLong(1, key);
        insert.setInt(2, probe);
        insert.setLong(3, number);
        insert.setLong(4, sealed.lowNanos());
        insert.setLong(5, sealed.highNanos());
        insert.setBytes(6, sealed.summary());
        insert.setBytes(7, sealed.block());
        insert.executeUpdate();
        summaries(probe, 0, number + 1);
    }

    private long nextBlock(int probe) throws SQLException {
        PreparedStatement select = statements.of(results.sql(NEXT_BLOCK));
        select.setLong(1, key);
        select.setInt(2, probe);
        try (ResultSet row = select.executeQuery()) {
            row.next();
            return row.getLong(1);
        }
    }

    /**
     * Adds to the level above what has come together on a level.
     *
     * @param end number of the next row of that level
     */
    private void summaries(int probe, int level, long end) throws SQLException, StoreException {
        if (end % FAN != 0) {
            return;
        }
        List<Groups> groups = above(probe, level, end);
        summary(probe, level + 1, end / FAN - 1, groups);
        summaries(probe, level + 1, end / FAN);
    }

    private void summary(int probe, int level, long number, List<Groups> groups) throws SQLException {
        PreparedStatement insert = statements.of(results.sql(INSERT_SUMMARY));
        insert.setLong(1, key);
        insert.setInt(2, probe);
        insert.setInt(3, level);
        insert.setLong(4, number);
        insert.setLong(5, SealedSamples.low(groups));
        insert.setLong(6, SealedSamples.high(groups));
        insert.setBytes(7, PackedGroups.pack(groups));
        insert.executeUpdate();
    }

    private List<Groups> above(int probe, int level, long end) throws SQLException, StoreException {
        Map<Integer, List<Groups>> channels = new TreeMap<>();
        PreparedStatement select = statements.of(results.sql(level == 0 ? LOWEST : BELOW));
        select.setLong(1, key);
        select.setInt(2, probe);
        select.setLong(3, end - FAN);
        select.setLong(4, end);
        if (level > 0) {
            select.setInt(5, level);
        }
        try (ResultSet row = select.executeQuery()) {
            while (row.next()) {
                byte[] block = row.getBytes(1);
                String what = "statistics of " + results.name(key) + ", probe " + probe;
                for (Groups groups :
                        failures.decode(what, () -> PackedGroups.of(block).all())) {
                    channels.computeIfAbsent(groups.channel(), c -> new ArrayList<>())
                            .add(groups.merged(FAN));
                }
            }
        }
        return channels.values().stream().map(Groups::joined).toList();
    }

    /** @param rows at least one */
    void events(List<PackedRows.Row> rows) throws SQLException {
        events(SealedEvents.pack(rows));
    }

    void events(SealedEvents sealed) throws SQLException {
        PreparedStatement insert = statements.of(INSERT_EVENTS);
        insert.setLong(1, key);
        insert.setLong(2, sealed.firstSequence());
        insert.setLong(3, sealed.nextSequence());
        insert.setLong(4, sealed.lowNanos());
        insert.setLong(5, sealed.highNanos());
        insert.setBytes(6, sealed.block());
        insert.executeUpdate();
    }
}
