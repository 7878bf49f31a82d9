package settlemark.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import settlemark.session.Span;
import settlemark.session.StoreException;

/**
 * Where all blocks of a workspace lie, found by reading the tables themselves: an index that hides some of them hides
 * nothing here. Within the caller's transaction.
 */
final class Survey {
    private final Map<Results, Map<Long, List<BlockPlace>>> samples = new TreeMap<>();
    private final Map<Results, Map<Long, List<SummaryPlace>>> summaries = new TreeMap<>();
    private final Map<Long, List<EventPlace>> events = new TreeMap<>();
    private final Map<String, List<Span>> unread = new TreeMap<>();

    /** A row of statistics above the lowest level. */
    record SummaryPlace(long id, int probe, int level, long number) {}

    /** A sealed block of events from one sequence number on and before another. */
    record EventPlace(long id, long first, long next, Span span) {}

    private Survey() {}

    static Survey of(Connection connection) throws SQLException, StoreException {
        Survey survey = new Survey();
        for (Results results : Results.values()) {
            survey.samples(connection, results);
            survey.summaries(connection, results);
        }
        survey.events(connection);
        return survey;
    }

    private void samples(Connection connection, Results results) throws SQLException, StoreException {
        String table = results.sql("{t}sample_block");
        List<String> columns = List.of(results.sql("{key}"), "probe", "number", "low_nanos", "high_nanos");
        Map<Long, List<BlockPlace>> found = new TreeMap<>();
        scan(connection, table, columns, row -> {
            Span span = new Span(row.number(4), row.number(5));
            BlockPlace place =
                    new BlockPlace(row.number(0), row.number(1), Math.toIntExact(row.number(2)), row.number(3), span);
            found.computeIfAbsent(place.key(), k -> new ArrayList<>()).add(place);
        });
        found.values().forEach(l -> l.sort(Comparator.comparing(BlockPlace::number)));
        samples.put(results, found);
    }

    private void summaries(Connection connection, Results results) throws SQLException, StoreException {
        String table = results.sql("{t}summary");
        Map<Long, List<SummaryPlace>> found = new TreeMap<>();
        scan(connection, table, List.of(results.sql("{key}"), "probe", "level", "number"), row -> {
            SummaryPlace place = new SummaryPlace(
                    row.number(0), Math.toIntExact(row.number(2)), Math.toIntExact(row.number(3)), row.number(4));
            found.computeIfAbsent(row.number(1), k -> new ArrayList<>()).add(place);
        });
        summaries.put(results, found);
    }

    private void events(Connection connection) throws SQLException, StoreException {
        List<String> columns = List.of("session", "first_sequence", "next_sequence", "low_nanos", "high_nanos");
        scan(connection, "event_block", columns, row -> {
            EventPlace place =
                    new EventPlace(row.number(0), row.number(2), row.number(3), new Span(row.number(4), row.number(5)));
            events.computeIfAbsent(row.number(1), k -> new ArrayList<>()).add(place);
        });
        events.values().forEach(l -> l.sort(Comparator.comparing(EventPlace::first)));
    }

    private void scan(Connection connection, String table, List<String> columns, RowScan.Taker taker)
            throws SQLException, StoreException {
        RowScan scan = new RowScan(connection, table, List.of("id"), columns);
        scan.all(row -> {
            try {
                taker.take(row);
            } catch (IllegalArgumentException | ArithmeticException e) {
                // A row whose own columns are destroyed: what it held is found missing by its number.
                unread.computeIfAbsent(table, t -> new ArrayList<>()).add(new Span(-1, -1));
            }
        });
        if (!scan.unread().isEmpty()) {
            unread.computeIfAbsent(table, t -> new ArrayList<>()).addAll(scan.unread());
        }
    }

    /** In the order of their numbers. */
    List<BlockPlace> samples(Results results, long key) {
        return samples.getOrDefault(results, Map.of()).getOrDefault(key, List.of());
    }

    List<SummaryPlace> summaries(Results results, long key) {
        return summaries.getOrDefault(results, Map.of()).getOrDefault(key, List.of());
    }

    /** In the order of their sequence numbers. */
    List<EventPlace> events(long session) {
        return events.getOrDefault(session, List.of());
    }

    /** Every session, or rereading, that has a block. */
    TreeSet<Long> keys(Results results) {
        TreeSet<Long> keys =
                new TreeSet<>(samples.getOrDefault(results, Map.of()).keySet());
        if (results == Results.OF_THE_DAY) {
            keys.addAll(events.keySet());
        }
        return keys;
    }

    /** By table the stretches of ids that could not be read. */
    Map<String, List<Span>> unread() {
        return unread;
    }
}
