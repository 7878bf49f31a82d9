package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import settlemark.decode.Rejected;
import settlemark.session.Overview;
import settlemark.session.SampleBlock;
import settlemark.session.SessionStore;
import settlemark.session.Span;
import settlemark.session.StoreException;
import settlemark.settle.StageReading;

/**
 * Reads the results of one session or of one rereading.
 *
 * @param results which of the two
 * @param key number of the session, or id of the rereading
 * @param name for messages, such as {@code session 3}
 */
record ResultReader(Readers readers, Failures failures, Results results, long key, String name) {
    private static final int REJECTED_PER_PAGE = 2048;
    private static final String SAMPLE_COUNT = "SELECT samples FROM {t}probe WHERE {key} = ? AND position = ?";

    private static final String REJECTED = "SELECT batch, part, time_nanos, stream_offset, reason FROM {t}rejected"
            + " WHERE {key} = ? AND (batch, part) > (?, ?) AND probe = ? ORDER BY batch, part LIMIT "
            + REJECTED_PER_PAGE;

    List<StageReading> readings() throws StoreException {
        return readers.read(connection -> ReadingRows.all(connection, failures, results, key, name));
    }

    SampleBlock samples(int probe, int channel, Span span) throws StoreException {
        return readers.read(connection -> samples(connection, probe).samples(channel, span));
    }

    SampleBlock last(int probe, int channel) throws StoreException {
        return readers.read(connection -> samples(connection, probe).last(channel));
    }

    private SampleReader samples(Connection connection, int probe) {
        return new SampleReader(connection, failures, results, key, name, probe);
    }

    List<Overview> overview(int probe, List<Integer> channels, Span span, int columns, Overview.Edges edges)
            throws StoreException {
        return readers.read(connection -> new OverviewReader(
                        connection, failures, results, key, name, probe, channels, span, columns)
                .read(edges));
    }

    long sampleCount(int probe) throws StoreException {
        return readers.read(connection -> count(connection, results.sql(SAMPLE_COUNT), key, probe));
    }

    /** Read in pages, so that a slow sink holds nothing back. */
    void rejected(int probe, SessionStore.Sink<Rejected> sink) throws StoreException {
        List<Row> page;
        Place last = new Place(-1, -1);
        do {
            Place after = last;
            page = readers.read(connection -> page(connection, probe, after));
            for (Row row : page) {
                sink.take(row.rejected);
                last = row.place;
            }
        } while (page.size() == REJECTED_PER_PAGE);
    }

    private record Place(long batch, int part) {}

    private record Row(Place place, Rejected rejected) {}

    private List<Row> page(Connection connection, int probe, Place after) throws SQLException {
        List<Row> page = new ArrayList<>();
        try (PreparedStatement select = connection.prepareStatement(results.sql(REJECTED))) {
            select.setLong(1, key);
            select.setLong(2, after.batch);
            select.setInt(3, after.part);
            select.setInt(4, probe);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    Rejected rejected = new Rejected(row.getLong(3), row.getLong(4), row.getString(5));
                    page.add(new Row(new Place(row.getLong(1), row.getInt(2)), rejected));
                }
            }
        }
        return page;
    }

    static long count(Connection connection, String query, long... arguments) throws SQLException {
        try (PreparedStatement select = connection.prepareStatement(query)) {
            for (int i = 0; i < arguments.length; i++) {
                select.setLong(i + 1, arguments[i]);
            }
            try (ResultSet row = select.executeQuery()) {
                return row.next() ? row.getLong(1) : 0;
            }
        }
    }
}
