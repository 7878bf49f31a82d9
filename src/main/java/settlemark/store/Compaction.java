package settlemark.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import org.sqlite.SQLiteErrorCode;
import settlemark.profile.Profile;
import settlemark.session.CheckReport;
import settlemark.session.StoreException;
import settlemark.session.StoreTools;

/**
 * Writes a workspace anew without its unused room. The new form is checked and holds as many rows of each table before it
 * takes the old one's place in one step; until then the old one is whole.
 */
final class Compaction {
    private static final String TABLES = "SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name";

    private final Path file;
    private final Function<String, Profile> profiles;
    private final Failures failures;

    /** @param file without links */
    Compaction(Path file, Function<String, Profile> profiles) {
        this.file = file;
        this.profiles = profiles;
        this.failures = new Failures(file);
    }

    StoreTools.Sizes run() throws StoreException {
        Opening.refuseReadOnly(file);
        WriterLock lock = WriterLock.take(file);
        try (NewWorkspace made = NewWorkspace.under(file)) {
            long before = size(file);
            write(made);
            release();
            made.replace();
            return new StoreTools.Sizes(before, size(file));
        } finally {
            lock.close();
        }
    }

    private void write(NewWorkspace made) throws StoreException {
        Map<String, Long> rows = write(made.part());
        CheckReport report = WorkspaceCheck.ofNew(made.part(), profiles);
        Backup.requireWhole(report, failures, "so it is left as it is");
        try (Connection reader = Connections.still(made.part())) {
            if (!rows(reader).equals(rows)) {
                throw failures.fault("its new form does not hold all rows, so it is left as it is");
            }
        } catch (SQLException e) {
            throw failures.of("cannot be read in its new form", e);
        }
    }

    /** Returns how many rows each table has. */
    private Map<String, Long> write(Path part) throws StoreException {
        try (Connection writer = Opening.write(file, failures)) {
            try (PreparedStatement vacuum = writer.prepareStatement("VACUUM INTO ?")) {
                vacuum.setString(1, part.toString());
                vacuum.executeUpdate();
            }
            return rows(writer);
        } catch (SQLException e) {
            throw failures.of("cannot be compacted", e);
        }
    }

    private static Map<String, Long> rows(Connection connection) throws SQLException {
        Map<String, Long> rows = new TreeMap<>();
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(TABLES)) {
            while (row.next()) {
                String table = row.getString(1);
                rows.put(table, ResultReader.count(connection, "SELECT count(*) FROM " + table));
            }
        }
        return rows;
    }

    /** Takes everything out of the log and removes it, which SQLite does only where nobody else has the file open. */
    private void release() throws StoreException {
        try (Connection writer = Connections.writer(file);
                Statement statement = writer.createStatement();
                ResultSet row = statement.executeQuery("PRAGMA journal_mode = DELETE")) {
            if (!row.getString(1).equals("delete")) {
                throw inUse();
            }
        } catch (SQLException e) {
            throw Failures.code(e) == SQLiteErrorCode.SQLITE_BUSY ? inUse() : failures.of("cannot be released", e);
        }
        if (Files.exists(Connections.log(file))) {
            throw inUse();
        }
    }

    private StoreException inUse() {
        return failures.fault("another program reads it, and it is left as it is; end that program and try again");
    }

    private long size(Path of) throws StoreException {
        try {
            return Files.size(of);
        } catch (IOException e) {
            throw failures.fault("its size cannot be read (" + e + ")", e);
        }
    }
}
