package settlemark.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.function.Function;
import org.sqlite.SQLiteConnection;
import settlemark.profile.Profile;
import settlemark.session.CheckReport;
import settlemark.session.StoreException;

/**
 * Copies a workspace through SQLite's backup, which knows what is still in the log. One transaction holds the workspace
 * as it is at its beginning, so that a writer neither waits nor makes the copy begin again.
 */
final class Backup {
    private static final String VIEW = "SELECT count(*) FROM sqlite_schema";

    private final Path file;
    private final Function<String, Profile> profiles;

    /** @param file without links */
    Backup(Path file, Function<String, Profile> profiles) {
        this.file = file;
        this.profiles = profiles;
    }

    CheckReport to(Path to) throws StoreException {
        Failures failures = new Failures(file);
        try (NewWorkspace made = NewWorkspace.at(to)) {
            try (Connection reader = Connections.reader(file)) {
                Opening.checkForReading(reader, failures);
                Connections.run(reader, "BEGIN");
                Schema.number(reader, VIEW);
                copy(reader, made);
            } catch (SQLException e) {
                throw failures.of("cannot be read", e);
            }
            CheckReport report = WorkspaceCheck.ofNew(made.part(), profiles);
            requireWhole(report, failures, "so no copy of it was made");
            Path appeared = made.appear(file);
            return new CheckReport(appeared, report.format(), report.contents(), report.damage(), report.more());
        }
    }

    private static void copy(Connection reader, NewWorkspace made) throws SQLException, StoreException {
        int code = reader.unwrap(SQLiteConnection.class)
                .getDatabase()
                .backup("main", made.part().toString(), null);
        if (code != 0) {
            throw made.failures().of("cannot be written", new SQLException("code " + code, null, code));
        }
    }

    static void requireWhole(CheckReport report, Failures failures, String consequence) throws StoreException {
        if (!report.whole()) {
            throw failures.damaged(
                    "is damaged, " + consequence + ": " + report.damage().get(0)
                            + (report.damage().size() > 1 ? " (and more)" : "")
                            + "; see all of it with \"store check\", and save what is whole with \"store repair\"");
        }
    }
}
