package settlemark.store;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import settlemark.codec.PackedRows;
import settlemark.measure.Chunk;
import settlemark.session.LinkChange;
import settlemark.session.RawBytes;
import settlemark.session.SessionEvent;
import settlemark.session.StoreException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Events as rows of a block: bytes as they came, everything else with its detail as JSON. A probe is stored one higher
 * than it is; 0 stands for none.
 */
final class EventRows {
    private static final int BYTES = 0;
    private static final int LINK = 1;
    private static final int DONE = 2;
    private static final int CLOCK = 3;

    private EventRows() {}

    /**
     * Events in their order.
     *
     * @param first sequence number of the first
     * @param keep whether bytes are among them
     */
    static List<PackedRows.Row> rows(List<SessionEvent> events, long first, RawBytes keep) {
        List<PackedRows.Row> rows = new ArrayList<>();
        for (int i = 0; i < events.size(); i++) {
            if (keep == RawBytes.KEPT || !(events.get(i) instanceof SessionEvent.Bytes)) {
                rows.add(row(first + i, events.get(i)));
            }
        }
        return rows;
    }

    private static PackedRows.Row row(long sequence, SessionEvent event) {
        if (event instanceof SessionEvent.Bytes bytes) {
            Chunk chunk = bytes.chunk();
            return new PackedRows.Row(
                    sequence, chunk.timeNanos(), BYTES, bytes.probe() + 1, chunk.input(), chunk.bytes());
        } else if (event instanceof SessionEvent.Link link) {
            ObjectNode detail =
                    Json.object().put("change", link.change().name()).put("words", link.words());
            return row(sequence, event, LINK, link.probe(), detail);
        } else if (event instanceof SessionEvent.Done done) {
            return row(sequence, event, DONE, -1, ActJson.of(done.act()));
        } else if (event instanceof SessionEvent.Clock clock) {
            ObjectNode detail = Json.object()
                    .put("slept", clock.slept())
                    .put("amountNanos", clock.amountNanos())
                    .put("words", clock.words());
            return row(sequence, event, CLOCK, -1, detail);
        }
        throw new IllegalArgumentException("no stored form for an event of " + event.getClass());
    }

    private static PackedRows.Row row(long sequence, SessionEvent event, int kind, int probe, ObjectNode detail) {
        byte[] json = Json.text(detail).getBytes(StandardCharsets.UTF_8);
        return new PackedRows.Row(sequence, event.timeNanos(), kind, probe + 1, 0, json);
    }

    /** Whether it is bytes that a probe sent. */
    static boolean bytesOf(PackedRows.Row row, int probe) {
        return row.kind() == BYTES && row.probe() == probe + 1;
    }

    static SessionEvent event(PackedRows.Row row, Failures failures, long session) throws StoreException {
        return failures.decode(new Stored(row, session));
    }

    private record Stored(PackedRows.Row row, long session) implements Failures.Stored<SessionEvent> {
        @Override
        public SessionEvent read() {
            return event(row);
        }

        @Override
        public String what() {
            return "event " + row.sequence() + " of session " + session;
        }
    }

    private static SessionEvent event(PackedRows.Row row) {
        int probe = row.probe() - 1;
        if (row.kind() == BYTES) {
            return new SessionEvent.Bytes(probe, new Chunk(row.timeNanos(), row.input(), row.content()));
        }
        JsonNode detail = Json.read(new String(row.content(), StandardCharsets.UTF_8));
        return switch (row.kind()) {
            case LINK ->
                new SessionEvent.Link(
                        probe,
                        row.timeNanos(),
                        LinkChange.valueOf(Json.string(detail, "change")),
                        Json.string(detail, "words"));
            case DONE -> new SessionEvent.Done(row.timeNanos(), ActJson.read(detail));
            case CLOCK ->
                new SessionEvent.Clock(
                        row.timeNanos(),
                        detail.required("slept").booleanValue(),
                        detail.required("amountNanos").longValue(),
                        Json.string(detail, "words"));
            default -> throw new IllegalArgumentException("unknown kind of event " + row.kind());
        };
    }
}
