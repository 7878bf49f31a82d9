package settlemark.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import settlemark.session.Damage;
import settlemark.session.Span;
import settlemark.session.StoreException;

/** Checks the file as SQLite's: pages, every index against its table, tables as they must be, rows that others name. */
final class StructureCheck {
    private static final int MOST_FINDINGS = 200;
    private static final Pattern MISSING = Pattern.compile("row (\\d+) missing from index (\\w+)");
    private static final String TABLES =
            "SELECT type || ' ' || name, coalesce(sql, '') FROM sqlite_schema" + " WHERE name NOT LIKE 'sqlite_stat%'";
    private static final String TABLE_OF = "SELECT tbl_name FROM sqlite_schema WHERE type = 'index' AND name = ?";

    private final Connection connection;
    private final Findings findings;

    StructureCheck(Connection connection, Findings findings) {
        this.connection = connection;
        this.findings = findings;
    }

    /** @param format that the tables must be of */
    void run(int format) throws SQLException, StoreException {
        for (String finding : integrity()) {
            findings.add(placed(finding));
        }
        references();
        tables(format);
    }

    private List<String> integrity() throws SQLException {
        List<String> lines = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("PRAGMA integrity_check(" + MOST_FINDINGS + ")")) {
            while (rows.next()) {
                rows.getString(1)
                        .lines()
                        .filter(l -> !l.equals("ok") && !l.startsWith("*** in database"))
                        .forEach(lines::add);
            }
        } catch (SQLException e) {
            RowScan.requireDamage(e);
            lines.add(String.valueOf(e.getMessage()));
        }
        return lines;
    }

    /** With the session and the time of a block that an index does not lead to. */
    private Damage placed(String finding) throws SQLException {
        Matcher missing = MISSING.matcher(finding);
        if (!missing.find()) {
            return Damage.ofFile(Opening.named(connection, finding));
        }
        String table = tableOf(missing.group(2));
        String words = "an index of table " + table + " does not lead to row " + missing.group(1)
                + ", so that a question may not find it";
        return place(table, Long.parseLong(missing.group(1)), words).orElseGet(() -> Damage.ofFile(words));
    }

    private String tableOf(String index) throws SQLException {
        try (PreparedStatement select = connection.prepareStatement(TABLE_OF)) {
            select.setString(1, index);
            try (ResultSet row = select.executeQuery()) {
                return row.next() ? row.getString(1) : index;
            }
        }
    }

    private Optional<Damage> place(String table, long id, String words) throws SQLException {
        @Nullable Results results = resultsOf(table);
        if (results == null) {
            return Optional.empty();
        }
        boolean ofProbe = !table.equals("event_block");
        String key = results.sql("{key}");
        String query = "SELECT " + key + ", low_nanos, high_nanos, " + (ofProbe ? "probe" : "-1") + " FROM " + table
                + " NOT INDEXED WHERE id = ?";
        try (PreparedStatement select = connection.prepareStatement(query)) {
            select.setLong(1, id);
            try (ResultSet row = select.executeQuery()) {
                if (!row.next()) {
                    return Optional.empty();
                }
                Span span = new Span(row.getLong(2), row.getLong(3));
                String probe = ofProbe ? "number " + row.getInt(4) : "";
                return Optional.of(new Damage(results.name(row.getLong(1)), probe, "", Optional.of(span), words));
            }
        } catch (SQLException e) {
            RowScan.requireDamage(e);
            return Optional.empty();
        }
    }

    private static @Nullable Results resultsOf(String table) {
        if (table.equals("event_block")) {
            return Results.OF_THE_DAY;
        }
        for (Results results : Results.values()) {
            if (table.equals(results.sql("{t}sample_block")) || table.equals(results.sql("{t}summary"))) {
                return results;
            }
        }
        return null;
    }

    private void references() throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("PRAGMA foreign_key_check")) {
            while (row.next()) {
                findings.add(Damage.ofFile("a row of table " + row.getString(1) + " belongs to one of table "
                        + row.getString(3) + " that is not there"));
            }
        } catch (SQLException e) {
            RowScan.requireDamage(e);
            findings.add(Damage.ofFile("which rows belong together cannot be looked at: " + e.getMessage()));
        }
    }

    private void tables(int format) throws SQLException, StoreException {
        Map<String, String> expected = fresh(format);
        Map<String, String> found;
        try {
            found = tables(connection);
        } catch (SQLException e) {
            RowScan.requireDamage(e);
            findings.add(Damage.ofFile("the list of tables cannot be read: " + e.getMessage()));
            return;
        }
        for (Map.Entry<String, String> table : expected.entrySet()) {
            String sql = found.remove(table.getKey());
            if (sql == null) {
                findings.add(Damage.ofFile(table.getKey() + " is missing"));
            } else if (!sql.equals(table.getValue())) {
                findings.add(Damage.ofFile(
                        table.getKey() + " is not made as it must be: " + difference(sql, table.getValue())));
            }
        }
        for (String left : found.keySet()) {
            findings.add(Damage.ofFile(left + " is no part of a workspace"));
        }
    }

    private static String difference(String found, String expected) {
        List<String> lines = found.lines().toList();
        List<String> right = expected.lines().toList();
        int at = 0;
        while (at < lines.size() && at < right.size() && lines.get(at).equals(right.get(at))) {
            at++;
        }
        return "line " + (at + 1) + " of its text is " + line(lines, at) + ", and must be " + line(right, at);
    }

    private static String line(List<String> lines, int at) {
        return at < lines.size() ? "\"" + lines.get(at).strip() + "\"" : "missing";
    }

    static Map<String, String> tables(Connection connection) throws SQLException {
        Map<String, String> tables = new TreeMap<>();
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(TABLES)) {
            while (row.next()) {
                tables.put(row.getString(1), row.getString(2));
            }
        }
        return tables;
    }

    /** Those of a workspace of a format, as it is just after it has been made. */
    static Map<String, String> fresh(int format) throws SQLException, StoreException {
        try (Connection memory = DriverManager.getConnection("jdbc:sqlite::memory:")) {
            Schema.migrate(memory, Schema.MIGRATIONS.subList(0, format), new Failures(Path.of("memory")));
            return tables(memory);
        }
    }
}
