package settlemark.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.sqlite.SQLiteErrorCode;
import settlemark.session.Damage;
import settlemark.session.StoreException;
import tools.jackson.core.JacksonException;

/** Moves rows that need no more than being read and fit into a new workspace: readings, refused frames, papers, settings. */
final class RowCopy {
    private static final List<String> REJECTED =
            List.of("batch", "part", "probe", "time_nanos", "stream_offset", "reason");
    private static final List<String> READING =
            List.of("batch", "part", "step", "purpose", "time_nanos", "by_hand", "hand_reason");
    private static final List<String> CHANNEL_READING = List.of(
            "batch",
            "part",
            "position",
            "role",
            "value",
            "standard_uncertainty",
            "settle_uncertainty",
            "zero_offset",
            "unit",
            "from_nanos",
            "to_nanos",
            "settled",
            "reason",
            "odd",
            "rule",
            "instrument");

    private final Connection from;
    private final Connection into;
    private final Findings lost;
    private final Statements inserts;
    private final Map<String, Map<Long, List<Long>>> owned = new HashMap<>();
    private long readings;

    RowCopy(Connection from, Connection into, Findings lost) {
        this.from = from;
        this.into = into;
        this.lost = lost;
        this.inserts = new Statements(into);
    }

    /** Of the session or rereading that was copied last. */
    long readings() {
        return readings;
    }

    /** Returns the last frame that a row names, -1 where none does. */
    long results(Results results, long key, String name, int probes) throws SQLException, StoreException {
        long[] last = {-1};
        String keyName = results.sql("{key}");
        RowScan.Taker noted = row -> last[0] = Math.max(last[0], row.number(1));
        table(results.sql("{t}rejected"), keyName, 2, REJECTED, key, name, "refused frame", row -> {
            noted.take(row);
            if (row.number(3) < 0 || row.number(3) >= probes) {
                throw new IllegalArgumentException("it is of a probe that is not there");
            }
        });
        readings = table(results.sql("{t}reading"), keyName, 2, READING, key, name, "reading", noted);
        table(
                results.sql("{t}channel_reading"),
                keyName,
                3,
                CHANNEL_READING,
                key,
                name,
                "a reading's channel",
                row -> {});
        readings -= unreadable(results, key, name);
        return last[0];
    }

    /** Removes readings that came over and still cannot be understood; returns how many. */
    private long unreadable(Results results, long key, String name) throws SQLException {
        try {
            ReadingRows.all(into, new Failures(Path.of("")), results, key, name);
            return 0;
        } catch (StoreException e) {
            lost.add(Damage.of(name, "all readings, because one cannot be understood"));
        }
        long all = readings;
        for (String table : List.of("{t}channel_reading", "{t}reading")) {
            try (PreparedStatement delete =
                    into.prepareStatement(results.sql("DELETE FROM " + table + " WHERE {key} = ?"))) {
                delete.setLong(1, key);
                delete.executeUpdate();
            }
        }
        return all;
    }

    void papers(long session) throws SQLException, StoreException {
        String name = Results.OF_THE_DAY.name(session);
        ofSession("note", PaperRows.NOTE_COLUMNS, session, name, PaperRows::note);
        List<String> attachment = List.of("session", "name", "media_type", "added_at", "digest", "content");
        ofSession("attachment", attachment, session, name, row -> {
            if (!PaperRows.digest(row.bytes(6)).equals(row.text(5))) {
                throw new IllegalArgumentException("its content does not have the digest it was stored with");
            }
        });
    }

    private void ofSession(String table, List<String> columns, long session, String name, RowScan.Taker check)
            throws SQLException, StoreException {
        RowScan scan = new RowScan(from, table, List.of("id"), columns);
        List<String> all = columns(List.of("id"), columns);
        for (long id : owned(table).getOrDefault(session, List.of())) {
            scan.between(id, id, row -> one(table, all, row, name, table, check));
        }
        if (!scan.unread().isEmpty()) {
            lost.add(Damage.of(name, scan.unread().size() + " of table " + table + " that cannot be read"));
        }
    }

    /** By session the ids of what it has in a table; the table is gone through once, without what is long in it. */
    private Map<Long, List<Long>> owned(String table) throws SQLException, StoreException {
        Map<Long, List<Long>> known = owned.get(table);
        if (known != null) {
            return known;
        }
        Map<Long, List<Long>> found = new HashMap<>();
        RowScan scan = new RowScan(from, table, List.of("id"), List.of("session"));
        scan.all(row -> {
            if (row.value(1) instanceof Number owner) {
                found.computeIfAbsent(owner.longValue(), s -> new ArrayList<>()).add(row.number(0));
            } else {
                lost.add(Damage.ofFile("a row of table " + table + " that belongs to no session"));
            }
        });
        if (!scan.unread().isEmpty()) {
            lost.add(Damage.ofFile("rows of table " + table + " that cannot be read"));
        }
        owned.put(table, found);
        return found;
    }

    void settings() throws SQLException, StoreException {
        try (PreparedStatement select = from.prepareStatement("SELECT key, value FROM setting ORDER BY key");
                ResultSet row = select.executeQuery()) {
            while (row.next()) {
                StoredRow stored = StoredRow.of(row, 2);
                one("setting", List.of("key", "value"), stored, "", "setting", r -> Json.read(r.text(1)));
            }
        } catch (SQLException e) {
            RowScan.requireDamage(e);
            lost.add(Damage.ofFile("settings that cannot be read"));
        }
    }

    private static List<String> columns(List<String> first, List<String> others) {
        List<String> all = new ArrayList<>(first);
        all.addAll(others);
        return all;
    }

    /** @param keys so many of the columns belong to the primary key */
    private long table(
            String table,
            String key,
            int keys,
            List<String> columns,
            long of,
            String name,
            String what,
            RowScan.Taker check)
            throws SQLException, StoreException {
        long[] copied = {0};
        List<String> order = columns(List.of(key), columns.subList(0, keys));
        RowScan scan = new RowScan(from, table, order, columns.subList(keys, columns.size()));
        List<String> all = columns(List.of(key), columns);
        scan.between(of, of, row -> copied[0] += one(table, all, row, name, what, check) ? 1 : 0);
        if (!scan.unread().isEmpty()) {
            lost.add(Damage.of(name, "some rows of table " + table + " cannot be read"));
        }
        return copied[0];
    }

    private boolean one(String table, List<String> columns, StoredRow row, String of, String what, RowScan.Taker check)
            throws SQLException, StoreException {
        try {
            check.take(row);
            insert(table, columns, row);
            return true;
        } catch (IllegalArgumentException | JacksonException e) {
            lost.add(Damage.of(of, what + " that cannot be understood: " + e.getMessage()));
        } catch (SQLException e) {
            SQLiteErrorCode code = Failures.code(e);
            if (code != SQLiteErrorCode.SQLITE_CONSTRAINT && code != SQLiteErrorCode.SQLITE_MISMATCH) {
                throw e;
            }
            inserts.close();
            lost.add(Damage.of(of, what + " that does not fit: " + e.getMessage()));
        }
        return false;
    }

    private void insert(String table, List<String> columns, StoredRow row) throws SQLException {
        fill(inserts.of(insertion(table, columns)), columns, row);
    }

    static void insert(Connection into, String table, List<String> columns, StoredRow row) throws SQLException {
        try (PreparedStatement insert = into.prepareStatement(insertion(table, columns))) {
            fill(insert, columns, row);
        }
    }

    private static String insertion(String table, List<String> columns) {
        String places = String.join(", ", Collections.nCopies(columns.size(), "?"));
        return "INSERT INTO " + table + " (" + String.join(", ", columns) + ") VALUES (" + places + ")";
    }

    private static void fill(PreparedStatement insert, List<String> columns, StoredRow row) throws SQLException {
        for (int i = 0; i < columns.size(); i++) {
            insert.setObject(i + 1, row.value(i));
        }
        insert.executeUpdate();
    }
}
