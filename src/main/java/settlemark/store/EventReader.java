package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import settlemark.codec.PackedRows;
import settlemark.measure.Chunk;
import settlemark.session.RawBytes;
import settlemark.session.SessionEvent;
import settlemark.session.SessionStore;
import settlemark.session.Span;
import settlemark.session.StoreException;

/** Reads the events of a session, block by block and then the frames, so that a slow sink holds nothing back. */
final class EventReader {
    private static final String COUNT = "SELECT coalesce(max(next_sequence), 0) FROM frame WHERE session = ?";
    private static final String KEEPS = "SELECT keeps_bytes FROM session WHERE number = ?";
    private static final String BLOCK = "SELECT next_sequence, low_nanos, high_nanos, block FROM event_block"
            + " WHERE session = ? AND next_sequence > ? ORDER BY next_sequence LIMIT 1";
    private static final String FRAMES =
            "SELECT number, events FROM frame WHERE session = ? AND next_sequence > ? ORDER BY number";

    private final Readers readers;
    private final Failures failures;
    private final long session;

    EventReader(Readers readers, Failures failures, long session) {
        this.readers = readers;
        this.failures = failures;
        this.session = session;
    }

    /** @param next sequence number from which the following page begins */
    private record Page(List<PackedRows.Row> rows, long next) {}

    RawBytes rawBytes() throws StoreException {
        return readers.read(connection -> ResultReader.count(connection, KEEPS, session)) == 1
                ? RawBytes.KEPT
                : RawBytes.DROPPED;
    }

    /** Those that are stored when it is called. */
    void events(SessionStore.Sink<SessionEvent> sink) throws StoreException {
        boolean all = rawBytes() == RawBytes.KEPT;
        long count = count();
        long expected = 0;
        for (long from = 0; from < count; ) {
            Page page = page(from, count);
            for (PackedRows.Row row : page.rows) {
                if (all && row.sequence() != expected) {
                    throw missing(expected);
                }
                sink.take(EventRows.event(row, failures, session));
                expected = row.sequence() + 1;
            }
            from = page.next;
        }
        if (all && expected < count) {
            throw missing(expected);
        }
    }

    /** What a probe sent. */
    void bytes(int probe, Span span, SessionStore.Sink<Chunk> sink) throws StoreException {
        long count = count();
        for (long from = 0; from < count; ) {
            Page page = page(from, count);
            for (PackedRows.Row row : page.rows) {
                boolean within = row.timeNanos() >= span.fromNanos() && row.timeNanos() <= span.toNanos();
                if (within && EventRows.bytesOf(row, probe)) {
                    sink.take(new Chunk(row.timeNanos(), row.input(), row.content()));
                }
            }
            from = page.next;
        }
    }

    private long count() throws StoreException {
        return readers.read(connection -> ResultReader.count(connection, COUNT, session));
    }

    private StoreException missing(long sequence) {
        return failures.damaged("is damaged: of session " + session + " event " + sequence + " is missing");
    }

    private Page page(long from, long count) throws StoreException {
        return readers.read(connection -> {
            try (PreparedStatement select = connection.prepareStatement(BLOCK)) {
                select.setLong(1, session);
                select.setLong(2, from);
                try (ResultSet row = select.executeQuery()) {
                    if (row.next()) {
                        return sealed(row, from, count);
                    }
                }
            }
            return open(connection, from, count);
        });
    }

    private Page sealed(ResultSet row, long from, long count) throws SQLException, StoreException {
        long next = row.getLong(1);
        String what = "events of session " + session + ", up to event " + (next - 1) + ", from "
                + SampleReader.seconds(row.getLong(2)) + " to " + SampleReader.seconds(row.getLong(3));
        byte[] block = row.getBytes(4);
        return new Page(part(failures.decode(what, () -> PackedRows.unpack(block)), from, count), next);
    }

    private Page open(Connection connection, long from, long count) throws SQLException, StoreException {
        List<PackedRows.Row> rows = new ArrayList<>();
        try (PreparedStatement select = connection.prepareStatement(FRAMES)) {
            select.setLong(1, session);
            select.setLong(2, from);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    String what = "events of session " + session + ", not sealed yet, frame " + row.getLong(1);
                    byte[] events = row.getBytes(2);
                    rows.addAll(part(failures.decode(what, () -> PackedRows.unpack(events)), from, count));
                }
            }
        }
        return new Page(rows, count);
    }

    private static List<PackedRows.Row> part(List<PackedRows.Row> rows, long from, long count) {
        List<PackedRows.Row> part = new ArrayList<>(rows.size());
        for (PackedRows.Row row : rows) {
            if (row.sequence() >= from && row.sequence() < count) {
                part.add(row);
            }
        }
        return part;
    }
}
