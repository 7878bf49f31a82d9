package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.sqlite.SQLiteErrorCode;
import settlemark.session.SampleBlock;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;
import settlemark.session.WriteBatch;

/** The only writer of a workspace: each call is one transaction, durable when it returns or else undone. */
final class Writer {
    private static final String KEY_TAKEN = "SELECT 1 FROM session WHERE key = ?";
    private static final String END = "UPDATE session SET ended_nanos = ? WHERE number = ?";
    private static final String PLACE = "SELECT ended_nanos IS NOT NULL, (SELECT count(*) FROM probe WHERE session ="
            + " session.number), coalesce(batch.number + 1, 0), coalesce(next_sequence, 0)"
            + " FROM session LEFT JOIN batch ON batch.session = session.number"
            + " WHERE session.number = ? ORDER BY batch.number DESC LIMIT 1";

    private final Connection connection;
    private final Failures failures;

    /** Where each session stands that has been written to. Forgotten after a failure, and then read again. */
    private final Map<Long, Place> places = new HashMap<>();

    /** Forgotten after a failure too: the driver takes a statement away that has failed. */
    private final Map<Results, BatchRows> rows = new EnumMap<>(Results.class);

    Writer(Connection connection, Failures failures) {
        this.connection = connection;
        this.failures = failures;
    }

    private record Place(boolean ended, int probes, long nextBatch, long nextSequence) {}

    @FunctionalInterface
    interface Work<T> {
        T run(Connection connection) throws SQLException;
    }

    synchronized long begin(SessionHeader header) throws StoreException {
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
        return commit(what, open -> HeaderRows.insert(open, header));
    }

    synchronized void append(long session, WriteBatch batch) throws StoreException {
        Place place = place(session);
        check(session, place, batch);
        commit("cannot store what session " + session + " has gained", open -> {
            rows(Results.OF_THE_DAY).insert(session, place.nextBatch, batch);
            return batch;
        });
        long nextSequence = place.nextSequence + batch.events().size();
        places.put(session, new Place(false, place.probes, place.nextBatch + 1, nextSequence));
    }

    synchronized void end(long session, long timeNanos) throws StoreException {
        Place place = place(session);
        commit("cannot mark the end of session " + session, open -> {
            try (PreparedStatement end = open.prepareStatement(END)) {
                end.setLong(1, timeNanos);
                end.setLong(2, session);
                return end.executeUpdate();
            }
        });
        places.put(session, new Place(true, place.probes, place.nextBatch, place.nextSequence));
        checkpoint();
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
        if (batch.firstSequence() != place.nextSequence) {
            throw new IllegalArgumentException("session " + session + " goes on with event " + place.nextSequence
                    + ", but the batch begins with event " + batch.firstSequence());
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
                Place place = new Place(row.getBoolean(1), row.getInt(2), row.getLong(3), row.getLong(4));
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
            Connections.run(connection, "BEGIN IMMEDIATE");
            T result = work.run(connection);
            Connections.run(connection, "COMMIT");
            return result;
        } catch (SQLException e) {
            undo(e);
            throw failures.of(what, e);
        } catch (RuntimeException e) {
            undo(e);
            throw e;
        }
    }

    private void undo(Exception because) {
        places.clear();
        try {
            forgetRows();
        } catch (SQLException e) {
            because.addSuppressed(e);
        }
        Connections.rollBack(connection, because);
    }

    /** Statements for batches, for use within a transaction. */
    BatchRows rows(Results results) throws SQLException {
        BatchRows ready = rows.get(results);
        if (ready == null) {
            ready = new BatchRows(connection, results);
            rows.put(results, ready);
        }
        return ready;
    }

    private void forgetRows() throws SQLException {
        List<BatchRows> old = List.copyOf(rows.values());
        rows.clear();
        for (BatchRows statements : old) {
            statements.close();
        }
    }
}
