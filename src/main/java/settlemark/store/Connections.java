package settlemark.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;

/** Opens connections to a workspace, always with the same settings. */
final class Connections {
    private static final int BUSY_MILLIS = 5000;

    /** The log is cut back to this after a checkpoint. */
    static final int WAL_LIMIT_BYTES = 4 << 20;

    private static final int MOST_FINDINGS = 5;

    private Connections() {}

    /** The one connection that writes. The file is made where it is missing; nothing is written to it yet. */
    static Connection writer(Path file) throws SQLException {
        SQLiteConfig config = common();
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.enforceForeignKeys(true);
        // Nobody asks for the keys, and the driver would look them up after each row.
        config.setGetGeneratedKeys(false);
        Connection connection = config.createConnection(url(file, ""));
        // Only on macOS does this change anything: there, a plain sync leaves data in the drive's own cache.
        run(connection, "PRAGMA fullfsync = 1");
        run(connection, "PRAGMA checkpoint_fullfsync = 1");
        return connection;
    }

    /** From here on commits go to the log, which reads do not wait for. */
    static void useLog(Connection writer) throws SQLException {
        run(writer, "PRAGMA journal_mode = WAL");
        run(writer, "PRAGMA journal_size_limit = " + WAL_LIMIT_BYTES);
    }

    static Connection reader(Path file) throws SQLException {
        SQLiteConfig config = common();
        config.setReadOnly(true);
        return config.createConnection(url(file, isStill(file) ? "?immutable=1" : ""));
    }

    /** For a copy that nobody else has and that may be damaged: asks for nothing that reads the file. */
    static Connection scratch(Path file) throws SQLException {
        return common().createConnection(url(file, ""));
    }

    /** Reads a file that nobody else has, and makes no files beside it. */
    static Connection still(Path file) throws SQLException {
        SQLiteConfig config = common();
        config.setReadOnly(true);
        return config.createConnection(url(file, "?immutable=1"));
    }

    /**
     * True for a workspace on a medium or in a folder that cannot be written, closed cleanly before: SQLite cannot make
     * its shared memory there, and needs none.
     */
    private static boolean isStill(Path file) {
        return !Files.isWritable(Opening.folder(file)) && !cutOff(file);
    }

    private static SQLiteConfig common() {
        SQLiteConfig config = new SQLiteConfig();
        config.setBusyTimeout(BUSY_MILLIS);
        // The folder for temporary files may be full or forbidden while the workspace's disk is not.
        config.setTempStore(SQLiteConfig.TempStore.MEMORY);
        return config;
    }

    /** As a URI, because the driver takes a question mark in a plain name for the start of its own options. */
    private static String url(Path file, String options) {
        return "jdbc:sqlite:" + file.toUri() + options;
    }

    /** The log beside a workspace. */
    static Path log(Path file) {
        return file.resolveSibling(file.getFileName() + "-wal");
    }

    /** Whether the log holds something: it is in use, or was not closed in order, which empties or removes it. */
    static boolean cutOff(Path file) {
        try {
            return Files.size(log(file)) > 0;
        } catch (IOException e) {
            return false;
        }
    }

    /** Moves the log into the file as far as nobody is reading it. */
    static void checkpoint(Connection writer) throws SQLException {
        run(writer, "PRAGMA wal_checkpoint(PASSIVE)");
    }

    /** What SQLite's quick check finds, empty where all is well; reads the whole file. */
    static List<String> quickCheck(Connection connection) throws SQLException {
        List<String> findings = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("PRAGMA quick_check(" + MOST_FINDINGS + ")")) {
            while (rows.next()) {
                rows.getString(1).lines().filter(l -> !l.equals("ok")).forEach(findings::add);
            }
        } catch (SQLException e) {
            if (Failures.code(e) != SQLiteErrorCode.SQLITE_CORRUPT) {
                throw e;
            }
            findings.add(String.valueOf(e.getMessage()));
        }
        return List.copyOf(findings);
    }

    /** Undoes what is open. Some errors make SQLite do so by itself, and then it refuses to do it again. */
    static void rollBack(Connection connection, Exception because) {
        try {
            run(connection, "ROLLBACK");
        } catch (SQLException e) {
            because.addSuppressed(e);
        }
    }

    static void run(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }
}
