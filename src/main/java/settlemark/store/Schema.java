package settlemark.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import settlemark.session.StoreException;

/**
 * The tables and how they came to be. {@code PRAGMA user_version} counts the migrations that a file has been through;
 * {@code PRAGMA application_id} says that it is a workspace at all.
 *
 * <p>Tables: {@code session} (one row a session, plan and plate as JSON), {@code profile} (text by digest), {@code
 * probe}, {@code event} (in sequence; kinds as in {@link EventRows}), {@code batch} (one row a commit), {@code
 * sample_block} (packed by {@link BlockCodec}), {@code rejected}, {@code reading} and {@code channel_reading}; {@code
 * rereading} (one row a rereading) and {@code reread_probe}, {@code reread_batch} and so on, its results. Times are
 * session nanoseconds.
 */
final class Schema {
    /** "Stlm" in ASCII. */
    static final int APPLICATION_ID = 0x53746c6d;

    /** Sessions, their events, and what was decoded on the day. */
    private static final List<String> SESSIONS = List.of("""
            CREATE TABLE session (
                number INTEGER PRIMARY KEY AUTOINCREMENT,
                key TEXT NOT NULL UNIQUE,
                title TEXT NOT NULL,
                started_at TEXT NOT NULL,
                zone TEXT NOT NULL,
                pressure_unit TEXT NOT NULL,
                temperature_unit TEXT NOT NULL,
                simulated INTEGER NOT NULL,
                plan TEXT,
                plate TEXT,
                version TEXT NOT NULL,
                ended_nanos INTEGER
            ) STRICT""", """
            CREATE TABLE profile (
                digest TEXT PRIMARY KEY,
                id TEXT NOT NULL,
                name TEXT NOT NULL,
                text TEXT NOT NULL
            ) STRICT, WITHOUT ROWID""", """
            CREATE TABLE probe (
                session INTEGER NOT NULL REFERENCES session,
                position INTEGER NOT NULL,
                name TEXT NOT NULL,
                scheme TEXT NOT NULL,
                path TEXT NOT NULL,
                profile TEXT NOT NULL REFERENCES profile,
                roles TEXT NOT NULL,
                samples INTEGER NOT NULL DEFAULT 0,
                PRIMARY KEY (session, position)
            ) STRICT, WITHOUT ROWID""", """
            CREATE TABLE event (
                session INTEGER NOT NULL REFERENCES session,
                sequence INTEGER NOT NULL,
                kind INTEGER NOT NULL,
                time_nanos INTEGER NOT NULL,
                probe INTEGER,
                bytes BLOB,
                detail TEXT,
                PRIMARY KEY (session, sequence),
                FOREIGN KEY (session, probe) REFERENCES probe
            ) STRICT, WITHOUT ROWID""", """
            CREATE TABLE batch (
                session INTEGER NOT NULL REFERENCES session,
                number INTEGER NOT NULL,
                next_sequence INTEGER NOT NULL,
                until_nanos INTEGER NOT NULL,
                low_nanos INTEGER,
                high_nanos INTEGER,
                PRIMARY KEY (session, number)
            ) STRICT, WITHOUT ROWID""", """
            CREATE TABLE sample_block (
                session INTEGER NOT NULL,
                batch INTEGER NOT NULL,
                probe INTEGER NOT NULL,
                channel INTEGER NOT NULL,
                part INTEGER NOT NULL,
                block BLOB NOT NULL,
                PRIMARY KEY (session, batch, probe, channel, part),
                FOREIGN KEY (session, batch) REFERENCES batch
            ) STRICT, WITHOUT ROWID""", """
            CREATE TABLE rejected (
                session INTEGER NOT NULL,
                batch INTEGER NOT NULL,
                part INTEGER NOT NULL,
                probe INTEGER NOT NULL,
                time_nanos INTEGER NOT NULL,
                stream_offset INTEGER NOT NULL,
                reason TEXT NOT NULL,
                PRIMARY KEY (session, batch, part),
                FOREIGN KEY (session, batch) REFERENCES batch
            ) STRICT, WITHOUT ROWID""", """
            CREATE TABLE reading (
                session INTEGER NOT NULL,
                batch INTEGER NOT NULL,
                part INTEGER NOT NULL,
                step TEXT NOT NULL,
                purpose TEXT NOT NULL,
                time_nanos INTEGER NOT NULL,
                by_hand INTEGER NOT NULL,
                hand_reason TEXT NOT NULL,
                PRIMARY KEY (session, batch, part),
                FOREIGN KEY (session, batch) REFERENCES batch
            ) STRICT, WITHOUT ROWID""", """
            CREATE TABLE channel_reading (
                session INTEGER NOT NULL,
                batch INTEGER NOT NULL,
                part INTEGER NOT NULL,
                position INTEGER NOT NULL,
                role TEXT NOT NULL,
                value REAL,
                standard_uncertainty REAL,
                settle_uncertainty REAL,
                zero_offset REAL,
                unit TEXT NOT NULL,
                from_nanos INTEGER NOT NULL,
                to_nanos INTEGER NOT NULL,
                settled INTEGER NOT NULL,
                reason TEXT NOT NULL,
                odd TEXT,
                PRIMARY KEY (session, batch, part, position),
                FOREIGN KEY (session, batch, part) REFERENCES reading
            ) STRICT, WITHOUT ROWID""");

    /**
     * Rereadings, and bytes of other inputs than the first, which earlier versions would take for the first's. The
     * results of a rereading lie in tables of the same shape as those of the day.
     */
    private static final List<String> REREADINGS = List.of("""
            CREATE TABLE rereading (
                id INTEGER PRIMARY KEY AUTOINCREMENT,
                session INTEGER NOT NULL REFERENCES session,
                number INTEGER NOT NULL,
                made_at TEXT NOT NULL,
                version TEXT NOT NULL,
                complete INTEGER NOT NULL DEFAULT 0,
                UNIQUE (session, number)
            ) STRICT""", """
            CREATE TABLE reread_probe (
                rereading INTEGER NOT NULL REFERENCES rereading,
                position INTEGER NOT NULL,
                profile TEXT NOT NULL REFERENCES profile,
                roles TEXT NOT NULL,
                samples INTEGER NOT NULL DEFAULT 0,
                PRIMARY KEY (rereading, position)
            ) STRICT, WITHOUT ROWID""", """
            CREATE TABLE reread_batch (
                rereading INTEGER NOT NULL REFERENCES rereading,
                number INTEGER NOT NULL,
                next_sequence INTEGER NOT NULL,
                until_nanos INTEGER NOT NULL,
                low_nanos INTEGER,
                high_nanos INTEGER,
                PRIMARY KEY (rereading, number)
            ) STRICT, WITHOUT ROWID""", """
            CREATE TABLE reread_sample_block (
                rereading INTEGER NOT NULL,
                batch INTEGER NOT NULL,
                probe INTEGER NOT NULL,
                channel INTEGER NOT NULL,
                part INTEGER NOT NULL,
                block BLOB NOT NULL,
                PRIMARY KEY (rereading, batch, probe, channel, part),
                FOREIGN KEY (rereading, batch) REFERENCES reread_batch
            ) STRICT, WITHOUT ROWID""", """
            CREATE TABLE reread_rejected (
                rereading INTEGER NOT NULL,
                batch INTEGER NOT NULL,
                part INTEGER NOT NULL,
                probe INTEGER NOT NULL,
                time_nanos INTEGER NOT NULL,
                stream_offset INTEGER NOT NULL,
                reason TEXT NOT NULL,
                PRIMARY KEY (rereading, batch, part),
                FOREIGN KEY (rereading, batch) REFERENCES reread_batch
            ) STRICT, WITHOUT ROWID""", """
            CREATE TABLE reread_reading (
                rereading INTEGER NOT NULL,
                batch INTEGER NOT NULL,
                part INTEGER NOT NULL,
                step TEXT NOT NULL,
                purpose TEXT NOT NULL,
                time_nanos INTEGER NOT NULL,
                by_hand INTEGER NOT NULL,
                hand_reason TEXT NOT NULL,
                PRIMARY KEY (rereading, batch, part),
                FOREIGN KEY (rereading, batch) REFERENCES reread_batch
            ) STRICT, WITHOUT ROWID""", """
            CREATE TABLE reread_channel_reading (
                rereading INTEGER NOT NULL,
                batch INTEGER NOT NULL,
                part INTEGER NOT NULL,
                position INTEGER NOT NULL,
                role TEXT NOT NULL,
                value REAL,
                standard_uncertainty REAL,
                settle_uncertainty REAL,
                zero_offset REAL,
                unit TEXT NOT NULL,
                from_nanos INTEGER NOT NULL,
                to_nanos INTEGER NOT NULL,
                settled INTEGER NOT NULL,
                reason TEXT NOT NULL,
                odd TEXT,
                PRIMARY KEY (rereading, batch, part, position),
                FOREIGN KEY (rereading, batch, part) REFERENCES reread_reading
            ) STRICT, WITHOUT ROWID""");

    static final List<List<String>> MIGRATIONS = List.of(SESSIONS, REREADINGS);

    /** Formats from here on are read as they are; the missing tables hold nothing. */
    static final int OLDEST_READ = 1;

    /** The first format with rereadings. */
    static final int WITH_REREADINGS = 2;

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
    static boolean migrate(Connection connection, List<List<String>> migrations) throws SQLException {
        int from = number(connection, "PRAGMA user_version");
        if (from >= migrations.size()) {
            return false;
        }
        try (Statement statement = connection.createStatement()) {
            statement.executeUpdate("BEGIN IMMEDIATE");
            try {
                for (List<String> migration : migrations.subList(from, migrations.size())) {
                    for (String change : migration) {
                        statement.executeUpdate(change);
                    }
                }
                statement.executeUpdate("PRAGMA application_id = " + APPLICATION_ID);
                statement.executeUpdate("PRAGMA user_version = " + migrations.size());
                statement.executeUpdate("COMMIT");
            } catch (SQLException e) {
                Connections.rollBack(connection, e);
                throw e;
            }
        }
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
