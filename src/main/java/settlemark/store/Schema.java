package settlemark.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.function.UnaryOperator;
import settlemark.session.StoreException;

/**
 * The tables and how they came to be. {@code PRAGMA user_version} counts the migrations that a file has been through;
 * {@code PRAGMA application_id} says that it is a workspace at all.
 *
 * <p>Tables: {@code session} (one row a session, plan and plate as JSON), {@code profile} (text by digest), {@code
 * probe}; {@code frame} (what each commit has brought, until it is sealed), {@code sample_block} (sealed samples of a
 * probe), {@code summary} (their statistics, level by level), {@code event_block} (sealed events); {@code rejected},
 * {@code reading}, {@code channel_reading}; {@code rereading} (one row a rereading) and {@code reread_probe}, {@code
 * reread_frame} and so on, its results; {@code setting}, {@code note}, {@code attachment}; {@code instrument} with {@code
 * correction_point} and {@code instrument_zero}. Times are session nanoseconds.
 * What each format added is in the files {@code format-N.sql}.
 */
final class Schema {
    /** "Stlm" in ASCII. */
    static final int APPLICATION_ID = 0x53746c6d;

    private static final UnaryOperator<String> AS_IT_IS = text -> text;

    /** Each brings a file from the format that has its place in the list to the next. */
    static final List<Migration> MIGRATIONS = List.of(
            Migration.read("format-1.sql", AS_IT_IS),
            Migration.read("format-2.sql", AS_IT_IS),
            (connection, failures) -> {
                Migration.read("format-3.sql", AS_IT_IS).run(connection, failures);
                for (Results results : Results.values()) {
                    Migration.read("format-3-results.sql", results::sql).run(connection, failures);
                }
                new FormerResults(connection, failures).move();
            },
            (connection, failures) -> {
                Migration.read("format-4.sql", AS_IT_IS).run(connection, failures);
                for (Results results : Results.values()) {
                    Migration.read("format-4-results.sql", results::sql).run(connection, failures);
                }
            },
            (connection, failures) -> {
                Migration.read("format-5.sql", AS_IT_IS).run(connection, failures);
                for (Results results : Results.values()) {
                    Migration.read("format-5-results.sql", results::sql).run(connection, failures);
                }
            });

    private Schema() {}

    /** What a file says about itself, in {@link #read}. */
    record Identity(int applicationId, int version, int tables) {
        /** Nothing in it yet: it has just been made, or its maker was killed before the first commit. */
        boolean blank() {
            return applicationId == 0 && version == 0 && tables == 0;
        }
    }

    /** @throws SQLException also where the file is no database */
    static Identity read(Connection connection) throws SQLException {
        return new Identity(
                number(connection, "PRAGMA application_id"),
                number(connection, "PRAGMA user_version"),
                number(connection, "SELECT count(*) FROM sqlite_schema"));
    }

    /** Refuses what is not a workspace, or is one of a later version. */
    static void check(Identity identity, Failures failures) throws StoreException {
        if (identity.blank()) {
            return;
        }
        if (identity.applicationId != APPLICATION_ID) {
            throw failures.damaged("is a database of another program (application id 0x"
                    + Integer.toHexString(identity.applicationId) + "), not a workspace; name another file");
        }
        if (identity.version > MIGRATIONS.size()) {
            throw failures.damaged("has format " + identity.version + ", and this version reads up to "
                    + MIGRATIONS.size() + "; use the newer version that wrote it, or name another file");
        }
    }

    /** Brings a file up to the newest format, all or nothing; returns whether anything was to be done. */
    static boolean migrate(Connection connection, List<Migration> migrations, Failures failures)
            throws SQLException, StoreException {
        int from = number(connection, "PRAGMA user_version");
        if (from >= migrations.size()) {
            return false;
        }
        // While tables are replaced by others, rows point to what is not there yet.
        Connections.run(connection, "PRAGMA foreign_keys = 0");
        Connections.run(connection, "BEGIN IMMEDIATE");
        try {
            for (Migration migration : migrations.subList(from, migrations.size())) {
                migration.run(connection, failures);
            }
            Connections.run(connection, "PRAGMA application_id = " + APPLICATION_ID);
            Connections.run(connection, "PRAGMA user_version = " + migrations.size());
            Connections.run(connection, "COMMIT");
        } catch (SQLException | StoreException | RuntimeException e) {
            Connections.rollBack(connection, e);
            throw e;
        }
        Connections.run(connection, "PRAGMA foreign_keys = 1");
        return true;
    }

    static int number(Connection connection, String query) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(query)) {
            rows.next();
            return rows.getInt(1);
        }
    }
}
