package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Executor;
import org.sqlite.SQLiteErrorCode;
import settlemark.codec.PackedRows;
import settlemark.session.RawBytes;
import settlemark.session.SampleBlock;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;
import settlemark.session.WriteBatch;

/** The only writer of a workspace: each call is one transaction, durable when it returns or else undone. */
final class Writer {
    private static final String KEY_TAKEN = "SELECT 1 FROM session WHERE key = ?";
    private static final String END = "UPDATE session SET ended_nanos = ? WHERE number = ?";
    private static final String REOPEN = "UPDATE session SET ended_nanos = NULL WHERE number = ?";
    private static final String PLACE = "SELECT ended_nanos IS NOT NULL, keeps_bytes, (SELECT count(*) FROM probe"
            + " WHERE session = session.number) FROM session WHERE session.number = ?";

    private final Connection connection;
    private final Failures failures;

    /** What is known of each session that has been written to. Forgotten after a failure, and then read again. */
    private final Map<Long, Place> places = new HashMap<>();

    /** What is open of each session and rereading that is being written. Forgotten with the places. */
    private final Map<SeriesKey, Series> series = new HashMap<>();

    /** Forgotten after a failure too. */
    private final Statements statements;

    private final Map<Results, BatchRows> rows = new EnumMap<>(Results.class);

    private final Executor packer;

    /** @param packer where blocks are packed while commits go on; may run them at once */
    Writer(Connection connection, Failures failures, Executor packer) {
        this.connection = connection;
        this.packer = packer;
        this.statements = new Statements(connection);
        this.failures = failures;
    }

    private record SeriesKey(Results results, long key) {}

    private record Place(boolean ended, RawBytes keeps, int probes) {}

    @FunctionalInterface
    interface Work<T> {
        T run(Connection connection) throws SQLException, StoreException;
    }

    synchronized long begin(SessionHeader header, RawBytes bytes) throws StoreException {
        String what = "cannot begin session " + header.key();
        boolean taken;
        try (PreparedStatement select = connection.prepareStatement(KEY_TAKEN)) {
            select.setString(1, header.key());
            try (ResultSet row = select.executeQuery()) {
                taken = row.next();
            }
        } catch (SQLException e) {
            throw failures.of(what, e);
        }
        if (taken) {
            throw failures.fault("already has a session \"" + header.key() + "\"; begin this one under another key");
        }
        return commit(what, open -> HeaderRows.insert(open, header, bytes));
    }

    synchronized void append(long session, WriteBatch batch) throws StoreException {
        Place place = place(session);
        check(session, place, batch);
        checkSequence(session, batch);
        commit("cannot store what session " + session + " has gained", open -> {
            List<PackedRows.Row> events = EventRows.rows(batch.events(), batch.firstSequence(), place.keeps);
            append(Results.OF_THE_DAY, session, batch, events);
            return batch;
        });
    }

    /**
     * Within the caller's transaction.
     *
     * @param key number of the session, or id of the rereading
     * @param events of the batch as rows
     */
    void append(Results results, long key, WriteBatch batch, List<PackedRows.Row> events)
            throws SQLException, StoreException {
        Series open = series(results, key);
        long next = batch.firstSequence() + batch.events().size();
        open.append(statements, failures, batch.samples(), events, next, batch.untilNanos());
        rows(results).insert(key, open.number(), batch);
    }

    /** Seals what is left, within the caller's transaction. */
    void seal(Results results, long key) throws SQLException, StoreException {
        series(results, key).end(statements, failures);
        series.remove(new SeriesKey(results, key));
    }

    /** Of one that is being removed. */
    void forget(Results results, long key) {
        series.remove(new SeriesKey(results, key));
    }

    private Series series(Results results, long key) throws SQLException, StoreException {
        SeriesKey place = new SeriesKey(results, key);
        Series known = series.get(place);
        if (known == null) {
            known = Series.read(connection, failures, results, key, packer);
            series.put(place, known);
        }
        return known;
    }

    synchronized void end(long session, long timeNanos) throws StoreException {
        Place place = place(session);
        commit("cannot mark the end of session " + session, open -> {
            if (!place.ended) {
                seal(Results.OF_THE_DAY, session);
            }
            try (PreparedStatement end = open.prepareStatement(END)) {
                end.setLong(1, timeNanos);
                end.setLong(2, session);
                return end.executeUpdate();
            }
        });
        places.put(session, new Place(true, place.keeps, place.probes));
        checkpoint();
    }

    synchronized void reopen(long session) throws StoreException {
        Place place = place(session);
        if (!place.ended) {
            return;
        }
        commit("cannot open session " + session + " again", open -> {
            try (PreparedStatement reopen = open.prepareStatement(REOPEN)) {
                reopen.setLong(1, session);
                return reopen.executeUpdate();
            }
        });
        places.put(session, new Place(false, place.keeps, place.probes));
    }

    synchronized void close() throws StoreException {
        try {
            forgetRows();
            connection.close();
        } catch (SQLException e) {
            throw failures.of("cannot be closed", e);
        }
    }

    void checkpoint() throws StoreException {
        try {
            Connections.checkpoint(connection);
        } catch (SQLException e) {
            // Everything is durable in the log already; a full disk only keeps it there.
            if (Failures.code(e) != SQLiteErrorCode.SQLITE_FULL) {
                throw failures.of("cannot be brought up to date", e);
            }
        }
    }

    private static void check(long session, Place place, WriteBatch batch) {
        if (place.ended) {
            throw new IllegalStateException("session " + session + " has ended and gains nothing more");
        }
        for (SessionEvent event : batch.events()) {
            if (event instanceof SessionEvent.Bytes bytes) {
                checkProbe(session, place, bytes.probe());
            } else if (event instanceof SessionEvent.Link link) {
                checkProbe(session, place, link.probe());
            }
        }
        for (SampleBlock block : batch.samples()) {
            checkProbe(session, place, block.probe());
        }
        for (WriteBatch.ProbeRejected rejected : batch.rejected()) {
            checkProbe(session, place, rejected.probe());
        }
    }

    private void checkSequence(long session, WriteBatch batch) throws StoreException {
        try {
            long next = series(Results.OF_THE_DAY, session).nextSequence();
            if (batch.firstSequence() != next) {
                throw new IllegalArgumentException("session " + session + " goes on with event " + next
                        + ", but the batch begins with event " + batch.firstSequence());
            }
        } catch (SQLException e) {
            throw failures.of("cannot be read", e);
        }
    }

    private static void checkProbe(long session, Place place, int probe) {
        if (probe < 0 || probe >= place.probes) {
            throw new IllegalArgumentException(
                    "session " + session + " has " + place.probes + " probes, and none with index " + probe);
        }
    }

    private Place place(long session) throws StoreException {
        Place known = places.get(session);
        if (known != null) {
            return known;
        }
        try (PreparedStatement select = connection.prepareStatement(PLACE)) {
            select.setLong(1, session);
            try (ResultSet row = select.executeQuery()) {
                if (!row.next()) {
                    throw new IllegalArgumentException("the workspace has no session " + session);
                }
                Place place = new Place(
                        row.getBoolean(1), row.getBoolean(2) ? RawBytes.KEPT : RawBytes.DROPPED, row.getInt(3));
                places.put(session, place);
                return place;
            }
        } catch (SQLException e) {
            throw failures.of("cannot be read", e);
        }
    }

    /**
     * One transaction, durable when it returns or else undone.
     *
     * @param what would not have happened, such as {@code "cannot begin session 3"}
     */
    synchronized <T> T commit(String what, Work<T> work) throws StoreException {
        try {
            statements.of("BEGIN IMMEDIATE").execute();
            T result = work.run(connection);
            statements.of("COMMIT").execute();
            return result;
        } catch (SQLException e) {
            undo(e);
            throw failures.of(what, e);
        } catch (StoreException | RuntimeException e) {
            undo(e);
            throw e;
        }
    }

    private void undo(Exception because) {
        places.clear();
        series.clear();
        try {
            forgetRows();
        } catch (SQLException e) {
            because.addSuppressed(e);
        }
        Connections.rollBack(connection, because);
    }

    private BatchRows rows(Results results) throws SQLException {
        BatchRows ready = rows.get(results);
        if (ready == null) {
            ready = new BatchRows(statements, results);
            rows.put(results, ready);
        }
        return ready;
    }

    private void forgetRows() throws SQLException {
        rows.clear();
        statements.close();
    }
}
