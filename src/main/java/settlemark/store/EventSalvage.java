package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.codec.PackedRows;
import settlemark.session.Damage;
import settlemark.session.Span;
import settlemark.session.StoreException;

/**
 * Saves the events of one session. Where one of a session that keeps its bytes is lost, the session says from then on
 * that it does not have them all: no record may be made of what is left as if it were everything.
 */
final class EventSalvage {
    /** For a rereading, which has no events. */
    static final EventSalvage NONE = new EventSalvage();

    private static final String DROPPED = "UPDATE session SET keeps_bytes = 0 WHERE number = ? AND keeps_bytes = 1";

    private final @Nullable Source source;
    private final List<PackedRows.Row> open = new ArrayList<>();
    private long next;
    private long saved;
    private long holes;

    private record Source(
            Connection from,
            Connection into,
            Failures failures,
            long session,
            int probes,
            Survey survey,
            Findings lost) {}

    private EventSalvage() {
        source = null;
    }

    EventSalvage(
            Connection from,
            Connection into,
            Failures failures,
            long session,
            int probes,
            Survey survey,
            Findings lost) {
        source = new Source(from, into, failures, session, probes, survey, lost);
    }

    long saved() {
        return saved;
    }

    /** Sequence number behind the last one that was saved. */
    long next() {
        return next;
    }

    /** Those of the frames. */
    List<PackedRows.Row> open() {
        return List.copyOf(open);
    }

    void sealed() throws SQLException, StoreException {
        if (source == null) {
            return;
        }
        Sealing sealing = new Sealing(source.into, source.failures, Results.OF_THE_DAY, source.session);
        for (Survey.EventPlace place : source.survey.events(source.session)) {
            List<PackedRows.Row> rows = good(block(place), place.first());
            if (!rows.isEmpty()) {
                sealing.events(rows);
            }
        }
    }

    private List<PackedRows.Row> block(Survey.EventPlace place) throws SQLException {
        Source open = Objects.requireNonNull(source);
        String words = "events " + place.first() + " to " + (place.next() - 1) + " cannot be read: ";
        try (PreparedStatement select = open.from.prepareStatement("SELECT block FROM event_block WHERE id = ?")) {
            select.setLong(1, place.id());
            try (ResultSet row = select.executeQuery()) {
                row.next();
                return PackedRows.unpack(StoredRow.of(row, 1).bytes(0));
            }
        } catch (IllegalArgumentException e) {
            lost(Optional.of(place.span()), words + e.getMessage());
        } catch (SQLException e) {
            RowScan.requireDamage(e);
            lost(Optional.of(place.span()), words + e.getMessage());
        }
        return List.of();
    }

    private void lost(Optional<Span> span, String words) {
        if (source != null) {
            source.lost.add(new Damage(Results.OF_THE_DAY.name(source.session), "", "", span, words));
        }
    }

    /** @param end sequence number behind what the frame brought */
    void frame(byte[] bytes, long end) {
        if (source == null) {
            return;
        }
        try {
            open.addAll(good(PackedRows.unpack(bytes), next));
        } catch (IllegalArgumentException e) {
            lost(Optional.empty(), "events of what was stored last cannot be read: " + e.getMessage());
        }
        holes += Math.max(0, end - next);
        next = Math.max(next, end);
    }

    /** Those that go on where the last ones ended and can be understood. */
    private List<PackedRows.Row> good(List<PackedRows.Row> rows, long first) {
        Source open = Objects.requireNonNull(source);
        List<PackedRows.Row> good = new ArrayList<>();
        for (PackedRows.Row row : rows) {
            if (row.sequence() < Math.max(next, first)) {
                continue;
            }
            try {
                EventRows.event(row, open.failures, open.session);
                if (row.probe() < 0 || row.probe() > open.probes) {
                    lost(Optional.of(new Span(row.timeNanos(), row.timeNanos())), "event " + row.sequence());
                    continue;
                }
                holes += row.sequence() - next;
                next = row.sequence() + 1;
                good.add(row);
            } catch (StoreException e) {
                lost(Optional.of(new Span(row.timeNanos(), row.timeNanos())), "event " + row.sequence());
            }
        }
        saved += good.size();
        return good;
    }

    /** @param end sequence number behind everything */
    void finish(long end) throws SQLException {
        if (source == null || holes + (end - next) == 0) {
            return;
        }
        try (PreparedStatement update = source.into.prepareStatement(DROPPED)) {
            update.setLong(1, source.session);
            if (update.executeUpdate() == 1) {
                lost(
                        Optional.empty(),
                        holes + (end - next) + " events are lost, so no record can be made of the session and it cannot"
                                + " be decoded again; its samples and readings can be read and exported");
            }
        }
    }
}
