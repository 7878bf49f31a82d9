package settlemark.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import org.sqlite.SQLiteErrorCode;
import settlemark.job.CorrectionPoint;
import settlemark.profile.Profile;
import settlemark.session.CheckReport;
import settlemark.session.Damage;
import settlemark.session.StoreException;
import tools.jackson.core.JacksonException;

/**
 * Looks at everything in a workspace within one transaction, so that a writer may go on meanwhile. Blocks are found by
 * reading the tables, not through the indexes, and pages that cannot be read do not keep it from the others.
 */
final class WorkspaceCheck {
    private static final String COUNT = "SELECT count(*) FROM ";
    private static final CheckReport.Contents NOTHING = new CheckReport.Contents(0, 0, 0, 0, 0, 0, 0);

    private final Connection connection;
    private final Failures failures;
    private final Function<String, Profile> profiles;
    private final Findings findings = new Findings();

    private WorkspaceCheck(Connection connection, Failures failures, Function<String, Profile> profiles) {
        this.connection = connection;
        this.failures = failures;
        this.profiles = profiles;
    }

    /** @param file without links, of which it is known that it is there */
    static CheckReport of(Path file, Function<String, Profile> profiles) throws StoreException {
        return of(file, Connections::reader, profiles);
    }

    /** A file that has just been made and nobody else has. */
    static CheckReport ofNew(Path file, Function<String, Profile> profiles) throws StoreException {
        return of(file, Connections::still, profiles);
    }

    @FunctionalInterface
    private interface Opener {
        Connection open(Path file) throws SQLException;
    }

    private static CheckReport of(Path file, Opener opener, Function<String, Profile> profiles) throws StoreException {
        Failures failures = new Failures(file);
        int format = format(file, opener, failures);
        if (format == Schema.MIGRATIONS.size()) {
            return open(file, opener, file, format, failures, profiles);
        }
        return former(file, format, failures, profiles);
    }

    private static int format(Path file, Opener opener, Failures failures) throws StoreException {
        try (Connection reader = tolerant(opener, file)) {
            Opening.checkForReading(reader, failures);
            return Schema.read(reader).version();
        } catch (SQLException e) {
            throw failures.of("cannot be read", e);
        }
    }

    /** One that also looks into a file that was cut off, or whose list of tables is damaged; it cannot write. */
    private static Connection tolerant(Opener opener, Path file) throws SQLException {
        Connection reader = opener.open(file);
        Connections.run(reader, "PRAGMA writable_schema = 1");
        return reader;
    }

    /** What is of an older format is checked as a file, and then as the copy in the newest format that is made of it. */
    private static CheckReport former(Path file, int format, Failures failures, Function<String, Profile> profiles)
            throws StoreException {
        Findings structure = new Findings();
        try (Connection reader = Connections.reader(file)) {
            new StructureCheck(reader, structure).run(format);
        } catch (SQLException e) {
            throw failures.of("cannot be checked", e);
        }
        if (!structure.listed().isEmpty()) {
            return new CheckReport(file, format, NOTHING, structure.listed(), structure.more());
        }
        Path copy = Opening.readable(file, failures);
        try {
            return open(copy, Connections::reader, file, format, failures, profiles);
        } finally {
            Opening.removeCopy(copy);
        }
    }

    private static CheckReport open(
            Path read, Opener opener, Path file, int format, Failures failures, Function<String, Profile> profiles)
            throws StoreException {
        try (Connection reader = tolerant(opener, read)) {
            Connections.run(reader, "BEGIN");
            WorkspaceCheck check = new WorkspaceCheck(reader, failures, profiles);
            CheckReport.Contents contents = check.run();
            return new CheckReport(file, format, contents, check.findings.listed(), check.findings.more());
        } catch (SQLException e) {
            throw failures.of("cannot be checked", e);
        }
    }

    private CheckReport.Contents run() throws SQLException, StoreException {
        new StructureCheck(connection, findings).run(Schema.MIGRATIONS.size());
        try {
            return rows();
        } catch (SQLException e) {
            // What is asked for is right, so it is the list of tables that is not; that has been said.
            if (Failures.code(e) != SQLiteErrorCode.SQLITE_ERROR
                    || findings.listed().isEmpty()) {
                throw e;
            }
            findings.add(Damage.ofFile("the rows cannot be looked at while a table is not made as it must be ("
                    + e.getMessage() + "); \"store repair\" makes the tables' texts again"));
            return NOTHING;
        }
    }

    private CheckReport.Contents rows() throws SQLException, StoreException {
        Survey survey = survey();
        profiles();
        SessionCheck rows = new SessionCheck(connection, failures, profiles, survey, findings);
        Set<Long> sessions = new HashSet<>();
        long good = 0;
        for (long session : keys("session", "number")) {
            sessions.add(session);
            good += rows.session(session) ? 1 : 0;
        }
        Map<Long, String> rereadings = rereadings();
        for (Map.Entry<Long, String> rereading : rereadings.entrySet()) {
            rows.rereading(rereading.getKey(), rereading.getValue());
        }
        orphans(Results.OF_THE_DAY, survey, sessions);
        orphans(Results.OF_A_REREADING, survey, rereadings.keySet());
        settings();
        instruments();
        return new CheckReport.Contents(
                good,
                count("rereading WHERE complete = 1"),
                rows.samples(),
                rows.events(),
                rows.readings(),
                notes(),
                attachments());
    }

    private Survey survey() throws SQLException, StoreException {
        Survey survey;
        try {
            survey = Survey.of(connection);
        } catch (SQLException e) {
            RowScan.requireDamage(e);
            throw failures.of("cannot be checked", e);
        }
        survey.unread()
                .forEach((table, spans) -> findings.add(Damage.ofFile("rows of table " + table + " cannot be read, in "
                        + spans.size() + (spans.size() == 1 ? " stretch" : " stretches") + " of it")));
        return survey;
    }

    private void scan(String table, List<String> order, List<String> others, RowScan.Taker taker)
            throws SQLException, StoreException {
        RowScan scan = new RowScan(connection, table, order, others);
        try {
            scan.all(row -> {
                try {
                    taker.take(row);
                } catch (IllegalArgumentException | JacksonException e) {
                    findings.add(Damage.ofFile("a row of table " + table + " is damaged: " + e.getMessage()));
                }
            });
        } catch (SQLException e) {
            RowScan.requireDamage(e);
            findings.add(Damage.ofFile("table " + table + " cannot be read: " + e.getMessage()));
        }
        if (!scan.unread().isEmpty()) {
            findings.add(Damage.ofFile("rows of table " + table + " cannot be read"));
        }
    }

    private List<Long> keys(String table, String key) throws SQLException, StoreException {
        List<Long> keys = new ArrayList<>();
        scan(table, List.of(key), List.of(), row -> keys.add(row.number(0)));
        return keys;
    }

    /** By id; also those that are not complete, of which nothing may be damaged either. */
    private Map<Long, String> rereadings() throws SQLException, StoreException {
        Map<Long, String> rereadings = new TreeMap<>();
        scan(
                "rereading",
                List.of("id"),
                List.of("session", "number"),
                row -> rereadings.put(row.number(0), SqliteRereadings.name((int) row.number(2), row.number(1))));
        return rereadings;
    }

    private void orphans(Results results, Survey survey, Set<Long> known) {
        for (long key : survey.keys(results)) {
            if (!known.contains(key)) {
                findings.add(Damage.of(results.name(key), "it has samples or events, and no header"));
            }
        }
    }

    private void profiles() throws SQLException, StoreException {
        each("SELECT digest, id, text FROM profile", row -> {
            String digest = row.text(0);
            String found = profiles.apply(row.text(2)).digest();
            if (!found.equals(digest)) {
                findings.add(Damage.ofFile("the text of profile " + row.text(1) + " has digest " + found
                        + ", and was stored with " + digest));
            }
        });
    }

    /** Rows of a table whose key is text: there is nothing but to read it from its beginning. */
    private void each(String query, RowScan.Taker taker) throws SQLException, StoreException {
        try (PreparedStatement select = connection.prepareStatement(query);
                ResultSet row = select.executeQuery()) {
            int columns = row.getMetaData().getColumnCount();
            while (row.next()) {
                try {
                    taker.take(StoredRow.of(row, columns));
                } catch (IllegalArgumentException | IllegalStateException | JacksonException e) {
                    findings.add(Damage.ofFile("a row cannot be understood (" + query + "): " + e.getMessage()));
                }
            }
        } catch (SQLException e) {
            RowScan.requireDamage(e);
            findings.add(Damage.ofFile("rows cannot be read (" + query + "): " + e.getMessage()));
        }
    }

    private void settings() throws SQLException, StoreException {
        each("SELECT key, value FROM setting", row -> Json.read(row.text(1)));
    }

    private void instruments() throws SQLException, StoreException {
        Map<String, List<CorrectionPoint>> points = new HashMap<>();
        each(
                InstrumentRows.POINTS,
                row -> points.computeIfAbsent(row.text(0), s -> new ArrayList<>())
                        .add(InstrumentRows.point(row)));
        each(InstrumentRows.ZEROS, InstrumentRows::zero);
        each(
                InstrumentRows.ALL,
                row -> InstrumentRows.kept(row, points.getOrDefault(row.text(0), List.of()), List.of()));
    }

    private long notes() throws SQLException, StoreException {
        long[] whole = {0};
        scan("note", List.of("id"), PaperRows.NOTE_COLUMNS, row -> {
            PaperRows.note(row);
            whole[0]++;
        });
        return whole[0];
    }

    private long attachments() throws SQLException, StoreException {
        long[] whole = {0};
        scan("attachment", List.of("id"), List.of("session", "name", "digest", "content"), row -> {
            String name = Results.OF_THE_DAY.name(row.number(1));
            if (PaperRows.digest(row.bytes(4)).equals(row.text(3))) {
                whole[0]++;
            } else {
                findings.add(Damage.of(
                        name, "attachment \"" + row.text(2) + "\" does not have the digest it was stored with"));
            }
        });
        return whole[0];
    }

    private long count(String what) throws SQLException {
        try {
            return ResultReader.count(connection, COUNT + what);
        } catch (SQLException e) {
            RowScan.requireDamage(e);
            return 0;
        }
    }

    /** A message without the workspace's name before it, which the report has anyway. */
    static String without(Failures failures, String message) {
        String head = "workspace " + failures.file();
        String rest = message.startsWith(head) ? message.substring(head.length()) : message;
        return rest.replaceFirst("^:? *(is damaged: )?", "");
    }
}
