package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import settlemark.codec.PackedRows;
import settlemark.session.Damage;
import settlemark.session.RawBytes;
import settlemark.session.Span;
import settlemark.session.StoreException;

/** Checks the events of one session: that none is missing and each can be understood. Within the caller's transaction. */
final class EventCheck {
    private final Connection connection;
    private final Failures failures;
    private final long session;
    private final String name;
    private final int probes;
    private final RawBytes keeps;
    private final Survey survey;
    private final Findings findings;
    private long next;
    private long events;

    EventCheck(
            Connection connection,
            Failures failures,
            long session,
            int probes,
            RawBytes keeps,
            Survey survey,
            Findings findings) {
        this.connection = connection;
        this.failures = failures;
        this.session = session;
        this.name = Results.OF_THE_DAY.name(session);
        this.probes = probes;
        this.keeps = keeps;
        this.survey = survey;
        this.findings = findings;
    }

    /** Events that can be read. */
    long run() throws SQLException, StoreException {
        Span before = new Span(0, 0);
        for (Survey.EventPlace place : survey.events(session)) {
            // Without bytes numbers are left out, so only what overlaps is wrong.
            if (place.first() < next || keeps == RawBytes.KEPT && place.first() != next) {
                missing(place.first(), new Span(before.toNanos(), place.span().fromNanos()));
            }
            block(place);
            next = Math.max(next, place.next());
            before = place.span();
        }
        RowScan scan =
                new RowScan(connection, "frame", List.of("session", "number"), List.of("next_sequence", "events"));
        scan.between(session, session, this::frame);
        return events;
    }

    private void missing(long first, Span span) {
        String words = first > next
                ? "events " + next + " to " + (first - 1) + " are missing"
                : "events " + first + " to " + (next - 1) + " are there twice";
        damage(Optional.of(span), words);
    }

    private void damage(Optional<Span> span, String words) {
        findings.add(new Damage(name, "", "", span, words));
    }

    private void block(Survey.EventPlace place) throws SQLException, StoreException {
        String what = "events " + place.first() + " to " + (place.next() - 1);
        try (PreparedStatement select = connection.prepareStatement("SELECT block FROM event_block WHERE id = ?")) {
            select.setLong(1, place.id());
            try (ResultSet row = select.executeQuery()) {
                row.next();
                List<PackedRows.Row> rows =
                        PackedRows.unpack(StoredRow.of(row, 1).bytes(0));
                rows(rows, place.first(), place.next(), Optional.of(place.span()));
            }
        } catch (IllegalArgumentException e) {
            damage(Optional.of(place.span()), what + " cannot be read: " + e.getMessage());
        } catch (SQLException e) {
            RowScan.requireDamage(e);
            damage(Optional.of(place.span()), what + " cannot be read: " + e.getMessage());
        }
    }

    private void frame(StoredRow row) throws SQLException, StoreException {
        try {
            long end = row.number(2);
            rows(PackedRows.unpack(row.bytes(3)), next, end, Optional.empty());
            next = Math.max(next, end);
        } catch (IllegalArgumentException e) {
            damage(Optional.empty(), "events of what was stored last cannot be read: " + e.getMessage());
        }
    }

    /** @param first of the sequence numbers that must be there, before {@code end} */
    private void rows(List<PackedRows.Row> rows, long first, long end, Optional<Span> span) {
        long expected = first;
        for (PackedRows.Row row : rows) {
            boolean inPlace = keeps == RawBytes.KEPT ? row.sequence() == expected : row.sequence() >= expected;
            if (!inPlace || row.sequence() >= end) {
                damage(span, "event " + row.sequence() + " stands where event " + expected + " must be");
            }
            expected = row.sequence() + 1;
            understand(row, span);
        }
        if (keeps == RawBytes.KEPT && expected != end) {
            damage(span, "events " + expected + " to " + (end - 1) + " are missing");
        }
    }

    private void understand(PackedRows.Row row, Optional<Span> span) {
        try {
            EventRows.event(row, failures, session);
            if (row.probe() < 0 || row.probe() > probes) {
                damage(span, "event " + row.sequence() + " is of a probe that the session does not have");
            }
            events++;
        } catch (StoreException e) {
            damage(span, "event " + row.sequence() + " cannot be understood");
        }
    }
}
