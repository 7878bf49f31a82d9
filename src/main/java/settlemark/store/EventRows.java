package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Chunk;
import settlemark.session.LinkChange;
import settlemark.session.SessionEvent;
import settlemark.session.StoreException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Events as rows: bytes as they came, everything else with its detail as JSON. The detail of bytes is the number of
 * their input; it is NULL for input 0, which nearly all bytes have.
 */
final class EventRows {
    static final String INSERT = "INSERT INTO event (session, sequence, kind, time_nanos, probe, bytes, detail)"
            + " VALUES (?, ?, ?, ?, ?, ?, ?)";
    private static final String PAGE = "SELECT sequence, kind, time_nanos, probe, bytes, detail FROM event"
            + " WHERE session = ? AND sequence >= ? ORDER BY sequence LIMIT ?";

    private static final int BYTES = 0;
    private static final int LINK = 1;
    private static final int DONE = 2;
    private static final int CLOCK = 3;

    private EventRows() {}

    static void insert(PreparedStatement insert, long session, long sequence, SessionEvent event) throws SQLException {
        insert.setLong(1, session);
        insert.setLong(2, sequence);
        insert.setLong(4, event.timeNanos());
        if (event instanceof SessionEvent.Bytes bytes) {
            kind(insert, BYTES, bytes.probe());
            insert.setBytes(6, bytes.chunk().bytes());
            int input = bytes.chunk().input();
            insert.setString(7, input == 0 ? null : Integer.toString(input));
        } else {
            insert.setNull(6, Types.BLOB);
            insert.setString(7, Json.text(detail(insert, event)));
        }
        insert.executeUpdate();
    }

    private static ObjectNode detail(PreparedStatement insert, SessionEvent event) throws SQLException {
        ObjectNode detail = Json.object();
        if (event instanceof SessionEvent.Link link) {
            kind(insert, LINK, link.probe());
            return detail.put("change", link.change().name()).put("words", link.words());
        } else if (event instanceof SessionEvent.Done done) {
            kind(insert, DONE);
            return ActJson.of(done.act());
        } else if (event instanceof SessionEvent.Clock clock) {
            kind(insert, CLOCK);
            return detail.put("slept", clock.slept())
                    .put("amountNanos", clock.amountNanos())
                    .put("words", clock.words());
        }
        throw new IllegalArgumentException("no stored form for an event of " + event.getClass());
    }

    private static void kind(PreparedStatement insert, int kind, int probe) throws SQLException {
        insert.setInt(3, kind);
        insert.setInt(5, probe);
    }

    private static void kind(PreparedStatement insert, int kind) throws SQLException {
        insert.setInt(3, kind);
        insert.setNull(5, Types.INTEGER);
    }

    /** Up to so many events from a sequence number on. */
    static List<SessionEvent> page(Connection connection, Failures failures, long session, long from, int count)
            throws SQLException, StoreException {
        List<SessionEvent> events = new ArrayList<>();
        try (PreparedStatement select = connection.prepareStatement(PAGE)) {
            select.setLong(1, session);
            select.setLong(2, from);
            select.setInt(3, count);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    events.add(event(row, failures, session, from + events.size()));
                }
            }
        }
        return events;
    }

    private static SessionEvent event(ResultSet row, Failures failures, long session, long expected)
            throws SQLException, StoreException {
        long sequence = row.getLong(1);
        if (sequence != expected) {
            throw failures.damaged("is damaged: of session " + session + " event " + expected + " is missing");
        }
        int kind = row.getInt(2);
        long timeNanos = row.getLong(3);
        int probe = row.getInt(4);
        byte[] bytes = row.getBytes(5);
        @Nullable String detail = row.getString(6);
        return failures.decode(
                "event " + sequence + " of session " + session,
                () -> kind == BYTES
                        ? new SessionEvent.Bytes(probe, new Chunk(timeNanos, input(detail), bytes))
                        : other(kind, probe, timeNanos, Json.read(detail)));
    }

    private static int input(@Nullable String detail) {
        return detail == null ? 0 : Integer.parseInt(detail);
    }

    private static SessionEvent other(int kind, int probe, long timeNanos, JsonNode detail) {
        return switch (kind) {
            case LINK ->
                new SessionEvent.Link(
                        probe,
                        timeNanos,
                        LinkChange.valueOf(Json.string(detail, "change")),
                        Json.string(detail, "words"));
            case DONE -> new SessionEvent.Done(timeNanos, ActJson.read(detail));
            case CLOCK ->
                new SessionEvent.Clock(
                        timeNanos,
                        detail.required("slept").booleanValue(),
                        detail.required("amountNanos").longValue(),
                        Json.string(detail, "words"));
            default -> throw new IllegalArgumentException("unknown kind of event " + kind);
        };
    }
}
