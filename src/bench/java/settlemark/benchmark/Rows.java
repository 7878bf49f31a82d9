package settlemark.benchmark;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Collections;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.duckdb.DuckDBAppender;
import org.duckdb.DuckDBConnection;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteConfig;

/** Plain tables in SQLite or DuckDB: long, with a row a sample, or wide, with a row a scan. */
final class Rows implements Contender {
    private static final String TIMES = "CREATE TABLE sample (time BIGINT PRIMARY KEY, ";

    private final String name;
    private final boolean duck;
    private final boolean wide;
    private final boolean plainDriver;
    private @Nullable Connection connection;
    private @Nullable PreparedStatement insert;

    /** @param plainDriver whether SQLite's driver may look up the key of each row, as it does unless it is told not to */
    Rows(String name, boolean duck, boolean wide, boolean plainDriver) {
        this.name = name;
        this.plainDriver = plainDriver;
        this.duck = duck;
        this.wide = wide;
    }

    @Override
    public String name() {
        return name;
    }

    private Connection connection() {
        if (connection == null) {
            throw new IllegalStateException("not open");
        }
        return connection;
    }

    private static String columns(String template) {
        return IntStream.range(0, Scans.CHANNELS)
                .mapToObj(i -> template.replace("?", Integer.toString(i)))
                .collect(Collectors.joining(", "));
    }

    @Override
    public void create(Path folder) throws SQLException {
        open(folder);
        try (Statement statement = connection().createStatement()) {
            if (duck) {
                statement.execute(
                        wide
                                ? "CREATE TABLE sample (time BIGINT, " + columns("c? DOUBLE") + ")"
                                : "CREATE TABLE sample (channel INTEGER, time BIGINT, value DOUBLE)");
                return;
            }
            statement.execute("PRAGMA journal_mode = WAL");
            statement.execute("PRAGMA synchronous = FULL");
            statement.execute(
                    wide
                            ? TIMES + columns("c? REAL") + ") WITHOUT ROWID"
                            : "CREATE TABLE sample (channel INTEGER, time INTEGER, value REAL,"
                                    + " PRIMARY KEY (channel, time)) WITHOUT ROWID");
        }
        connection().setAutoCommit(false);
        String places = String.join(", ", Collections.nCopies(wide ? 1 + Scans.CHANNELS : 3, "?"));
        insert = connection().prepareStatement("INSERT INTO sample VALUES (" + places + ")");
    }

    @Override
    public void commit(Scans scans) throws SQLException {
        if (duck) {
            append(scans);
            return;
        }
        PreparedStatement row = insert;
        if (row == null) {
            throw new IllegalStateException("not created");
        }
        if (wide) {
            for (int i = 0; i < Scans.PER_COMMIT; i++) {
                row.setLong(1, scans.times(0)[i]);
                for (int channel = 0; channel < Scans.CHANNELS; channel++) {
                    row.setDouble(channel + 2, scans.values[channel][i]);
                }
                row.executeUpdate();
            }
        } else {
            for (int channel = 0; channel < Scans.CHANNELS; channel++) {
                for (int i = 0; i < Scans.PER_COMMIT; i++) {
                    row.setInt(1, channel);
                    row.setLong(2, scans.times(channel)[i]);
                    row.setDouble(3, scans.values[channel][i]);
                    row.executeUpdate();
                }
            }
        }
        connection().commit();
    }

    /** Its quickest way in; a transaction that is committed is on the disk. */
    private void append(Scans scans) throws SQLException {
        connection().setAutoCommit(false);
        try (DuckDBAppender appender =
                connection().unwrap(DuckDBConnection.class).createAppender(DuckDBConnection.DEFAULT_SCHEMA, "sample")) {
            if (wide) {
                for (int i = 0; i < Scans.PER_COMMIT; i++) {
                    appender.beginRow();
                    appender.append(scans.times(0)[i]);
                    for (int channel = 0; channel < Scans.CHANNELS; channel++) {
                        appender.append(scans.values[channel][i]);
                    }
                    appender.endRow();
                }
            } else {
                for (int channel = 0; channel < Scans.CHANNELS; channel++) {
                    for (int i = 0; i < Scans.PER_COMMIT; i++) {
                        appender.beginRow();
                        appender.append(channel);
                        appender.append(scans.times(channel)[i]);
                        appender.append(scans.values[channel][i]);
                        appender.endRow();
                    }
                }
            }
            appender.flush();
        }
        connection().commit();
    }

    @Override
    public void finish() throws SQLException {
        if (insert != null) {
            insert.close();
        }
        if (duck) {
            connection().setAutoCommit(true);
            try (Statement statement = connection().createStatement()) {
                statement.execute("CHECKPOINT");
            }
        }
        connection().close();
    }

    @Override
    public void open(Path folder) throws SQLException {
        if (duck) {
            connection = DriverManager.getConnection("jdbc:duckdb:" + folder.resolve("w.duckdb"));
            return;
        }
        SQLiteConfig config = new SQLiteConfig();
        config.setGetGeneratedKeys(plainDriver);
        connection = config.createConnection("jdbc:sqlite:" + folder.resolve("w.sqlite"));
    }

    @Override
    public double[][][] overview(long endNanos, int columns) throws SQLException {
        double[][][] extremes = new double[Scans.CHANNELS][columns][];
        String divide = duck ? " // " : " / ";
        String column = "time * " + columns + divide + endNanos;
        String query = wide
                ? "SELECT " + column + " AS slot, " + columns("min(c?), max(c?)") + " FROM sample GROUP BY slot"
                : "SELECT " + column + " AS slot, channel, min(value), max(value) FROM sample GROUP BY channel, slot";
        try (Statement statement = connection().createStatement();
                ResultSet row = statement.executeQuery(query)) {
            while (row.next()) {
                int slot = row.getInt(1);
                if (wide) {
                    for (int channel = 0; channel < Scans.CHANNELS; channel++) {
                        extremes[channel][slot] =
                                new double[] {row.getDouble(2 * channel + 2), row.getDouble(2 * channel + 3)};
                    }
                } else {
                    extremes[row.getInt(2)][slot] = new double[] {row.getDouble(3), row.getDouble(4)};
                }
            }
        }
        return extremes;
    }

    @Override
    public long window(long fromNanos, long toNanos) throws SQLException {
        String in = wide ? "" : "channel IN (" + columns("?") + ") AND ";
        long samples = 0;
        try (Statement statement = connection().createStatement();
                ResultSet row = statement.executeQuery(
                        "SELECT * FROM sample WHERE " + in + "time BETWEEN " + fromNanos + " AND " + toNanos)) {
            while (row.next()) {
                for (int i = wide ? 2 : 3; i <= (wide ? 1 + Scans.CHANNELS : 3); i++) {
                    samples += Double.isNaN(row.getDouble(i)) ? 0 : 1;
                }
            }
        }
        return samples;
    }

    @Override
    public void close() throws SQLException {
        connection().close();
    }
}
