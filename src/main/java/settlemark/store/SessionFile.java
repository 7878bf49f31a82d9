package settlemark.store;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import settlemark.profile.Profile;
import settlemark.session.CheckReport;
import settlemark.session.StoreException;

/**
 * One session as a file of its own, which is a workspace with nothing else in it; and the way back. Rows are carried over
 * as they are, blocks byte for byte; only the numbers by which a workspace counts its sessions are given anew.
 */
public final class SessionFile {
    private static final String TABLES =
            "SELECT name FROM main.sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name";

    private SessionFile() {}

    /**
     * Writes a session into a new file, which is checked before it gets its name.
     *
     * @param workspace may be in use
     * @param to must not be there
     */
    public static void write(Path workspace, long session, Path to, Function<String, Profile> profiles)
            throws StoreException {
        Failures failures = new Failures(workspace);
        Path source = Opening.readable(workspace, failures);
        try (NewWorkspace made = NewWorkspace.at(to)) {
            try (Connection into = Connections.writer(made.part())) {
                Schema.migrate(into, Schema.MIGRATIONS, made.failures());
                carry(source, session, into);
            } catch (SQLException e) {
                throw failures.of("cannot be copied from", e);
            }
            CheckReport report = WorkspaceCheck.ofNew(made.part(), profiles);
            Backup.requireWhole(report, failures, "so no copy of the session was made");
            made.appear(workspace);
        } finally {
            if (!source.equals(workspace)) {
                Opening.removeCopy(source);
            }
        }
    }

    /**
     * Takes the only session of a file into a workspace, whole or not at all. Whether the file is what was sealed is for
     * the caller to check first.
     *
     * @return the session's number in the workspace
     */
    public static long takeIn(Path file, long session, WorkspacePlace place, Function<String, Profile> profiles)
            throws StoreException {
        Path workspace;
        try (SqliteStore store = SqliteStore.open(place, profiles)) {
            workspace = store.file();
        }
        Failures failures = new Failures(workspace);
        Path source = Opening.readable(file, new Failures(file));
        WriterLock lock = WriterLock.take(workspace);
        try (Connection into = Opening.write(workspace, failures)) {
            return carry(source, session, into);
        } catch (SQLException e) {
            throw failures.of("cannot take the session in", e);
        } finally {
            lock.close();
            if (!source.equals(file)) {
                Opening.removeCopy(source);
            }
        }
    }

    private static long carry(Path source, long session, Connection into) throws SQLException {
        try (PreparedStatement attach = into.prepareStatement("ATTACH DATABASE ? AS src")) {
            String how = Files.isWritable(source.toAbsolutePath().getParent()) ? "?mode=ro" : "?immutable=1";
            attach.setString(1, source.toUri() + how);
            attach.execute();
        }
        Connections.run(into, "BEGIN IMMEDIATE");
        try {
            long number = new Carrying(into, session).run();
            Connections.run(into, "COMMIT");
            return number;
        } catch (SQLException | RuntimeException e) {
            Connections.rollBack(into, e);
            throw e;
        } finally {
            Connections.run(into, "DETACH DATABASE src");
        }
    }

    /** Within one transaction. */
    private static final class Carrying {
        private final Connection into;
        private final long from;

        Carrying(Connection into, long from) {
            this.into = into;
            this.from = from;
        }

        long run() throws SQLException {
            // Rows come table by table, not parents first.
            Connections.run(into, "PRAGMA defer_foreign_keys = 1");
            long number = one("session", "number", "number = " + from, List.of());
            for (String table : tables("session")) {
                Connections.run(into, rows(table, "session", Long.toString(number), "session = " + from));
            }
            rereadings(number);
            Connections.run(
                    into,
                    "INSERT OR IGNORE INTO main.profile SELECT * FROM src.profile WHERE digest IN (SELECT profile FROM"
                            + " src.probe WHERE session = " + from + " UNION SELECT profile FROM src.reread_probe WHERE"
                            + " rereading IN (SELECT id FROM src.rereading WHERE session = " + from + "))");
            return number;
        }

        private void rereadings(long number) throws SQLException {
            for (long old : numbers("SELECT id FROM src.rereading WHERE session = " + from + " ORDER BY id")) {
                long anew = one("rereading", "id", "id = " + old, List.of("session", Long.toString(number)));
                for (String table : tables("rereading")) {
                    Connections.run(into, rows(table, "rereading", Long.toString(anew), "rereading = " + old));
                }
            }
        }

        /** Tables whose rows belong to one of another table, by the column that names it. */
        private List<String> tables(String key) throws SQLException {
            List<String> found = new ArrayList<>();
            for (String table : texts(TABLES)) {
                if (columns(table).contains(key) && !table.equals("rereading")) {
                    found.add(table);
                }
            }
            return found;
        }

        /** Carries one row, which gets a number of its own. */
        private long one(String table, String number, String where, List<String> set) throws SQLException {
            List<String> columns = new ArrayList<>(columns(table));
            columns.remove(number);
            List<String> values = new ArrayList<>(columns);
            if (!set.isEmpty()) {
                values.set(columns.indexOf(set.get(0)), set.get(1));
            }
            Connections.run(into, insert(table, columns, values, where));
            return numbers("SELECT last_insert_rowid()").get(0);
        }

        private String rows(String table, String key, String value, String where) throws SQLException {
            List<String> columns = new ArrayList<>(columns(table));
            boolean numbered = columns.remove("id");
            List<String> values = new ArrayList<>(columns);
            values.set(columns.indexOf(key), value);
            return insert(table, columns, values, where) + (numbered ? " ORDER BY id" : "");
        }

        private static String insert(String table, List<String> columns, List<String> values, String where) {
            return "INSERT INTO main." + table + " (" + String.join(", ", columns) + ") SELECT "
                    + String.join(", ", values) + " FROM src." + table + " WHERE " + where;
        }

        private List<String> columns(String table) throws SQLException {
            return texts("SELECT name FROM pragma_table_info('" + table + "', 'main') ORDER BY cid");
        }

        private List<String> texts(String query) throws SQLException {
            List<String> texts = new ArrayList<>();
            try (Statement statement = into.createStatement();
                    ResultSet row = statement.executeQuery(query)) {
                while (row.next()) {
                    texts.add(row.getString(1));
                }
            }
            return texts;
        }

        private List<Long> numbers(String query) throws SQLException {
            return texts(query).stream().map(Long::parseLong).toList();
        }
    }
}
