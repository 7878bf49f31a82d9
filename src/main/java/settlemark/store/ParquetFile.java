package settlemark.store;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import settlemark.session.StoreException;

/** Makes Parquet of exported samples, where DuckDB is among the program's classes; it is no part of the program. */
public final class ParquetFile {
    private static final String DRIVER = "org.duckdb.DuckDBDriver";
    private static final String COPY = "COPY (SELECT origin, regexp_replace(session, '^''', '') AS session, time,"
            + " session_nanos::BIGINT AS session_nanos, regexp_replace(probe, '^''', '') AS probe, channel, role,"
            + " CASE WHEN value LIKE 'NaN%' THEN 'NaN' ELSE value END::DOUBLE AS value, unit_ucum, status"
            + " FROM read_csv('{csv}', header = true, all_varchar = true, delim = ',', quote = '\"', escape = '\"',"
            + " nullstr = '\u0001')) TO '{into}' (FORMAT parquet, COMPRESSION zstd)";

    private ParquetFile() {}

    /** @throws StoreException where DuckDB is not there, with the remedy */
    public static void requireDriver() throws StoreException {
        try {
            Class.forName(DRIVER);
        } catch (ClassNotFoundException e) {
            throw new StoreException(
                    StoreException.Cause.FAULT,
                    "Parquet is written by DuckDB, which is not part of the program: put its file duckdb_jdbc.jar on the"
                            + " class path (java -cp settlemark.jar:duckdb_jdbc.jar settlemark.app.Main export ...), or"
                            + " export with --csv",
                    e);
        }
    }

    /**
     * Converts exported samples.
     *
     * @param csv as the export writes it
     * @param into is not there yet
     */
    public static void write(Path csv, Path into) throws IOException, StoreException {
        requireDriver();
        String sql = COPY.replace("{csv}", quoted(csv)).replace("{into}", quoted(into));
        try (Connection memory = DriverManager.getConnection("jdbc:duckdb:");
                Statement statement = memory.createStatement()) {
            statement.execute(sql);
        } catch (SQLException e) {
            throw new IOException("Parquet file " + into + " cannot be written: " + e.getMessage(), e);
        }
    }

    private static String quoted(Path path) {
        return path.toAbsolutePath().toString().replace("'", "''");
    }
}
