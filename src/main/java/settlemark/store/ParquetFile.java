package settlemark.store;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import settlemark.session.StoreException;

/** Makes Parquet of exported samples, where DuckDB is among the program's classes; it is no part of the program. */
public final class ParquetFile {
    private static final String DRIVER = "org.duckdb.DuckDBDriver";
    private static final String COPY = "COPY (SELECT origin, regexp_replace(session, '^''', '') AS session, time,"
            + " session_nanos::BIGINT AS session_nanos, regexp_replace(probe, '^''', '') AS probe, channel, role,"
            + " CASE WHEN value LIKE 'NaN%' THEN 'NaN' ELSE value END::DOUBLE AS value, unit_ucum, status"
            + " FROM read_csv('{csv}', header = true, all_varchar = true, delim = ',', quote = '\"', escape = '\"',"
            + " nullstr = '\u0001')) TO '{into}' (FORMAT parquet, COMPRESSION zstd)";

    /** Columns of a record's tables that hold numbers; an empty cell is none. */
    private static final Set<String> NUMBERS = Set.of(
            "value",
            "session_seconds",
            "expanded_uncertainty_k2",
            "zero_taken_off",
            "limit_low",
            "limit_high",
            "correction_added",
            "correction_expanded_uncertainty_k2");

    private static final String COPY_TABLE = "COPY (SELECT * REPLACE ({numbers}) FROM read_csv('{csv}', header = true,"
            + " all_varchar = true, delim = ',', quote = '\"', escape = '\"', nullstr = '\u0001')) TO '{into}'"
            + " (FORMAT parquet, COMPRESSION zstd)";

    private ParquetFile() {}

    /** @throws StoreException where DuckDB is not there, with the remedy */
    public static void requireDriver() throws StoreException {
        try {
            Class.forName(DRIVER);
        } catch (ClassNotFoundException e) {
            throw new StoreException(
                    StoreException.Cause.FAULT,
                    "Parquet is written by DuckDB, which is not part of the program: put its file duckdb_jdbc.jar on the"
                            + " class path (java -cp settlemark.jar:duckdb_jdbc.jar settlemark.app.Main ...), or"
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
        copy(COPY, csv, into);
    }

    /**
     * Converts a table of a record; texts are as they are in the CSV.
     *
     * @param csv as the record's are, with the names of its columns in the first line
     * @param into is not there yet
     */
    public static void table(Path csv, Path into) throws IOException, StoreException {
        List<String> names;
        try (BufferedReader reader = Files.newBufferedReader(csv, StandardCharsets.UTF_8)) {
            names = List.of(Objects.requireNonNullElse(reader.readLine(), "").split(",", -1));
        }
        String numbers = names.stream()
                .filter(NUMBERS::contains)
                .map(n -> "NULLIF(" + n + ", '')::DOUBLE AS " + n)
                .collect(Collectors.joining(", "));
        copy(COPY_TABLE.replace("{numbers}", numbers), csv, into);
    }

    private static void copy(String how, Path csv, Path into) throws IOException, StoreException {
        requireDriver();
        String sql = how.replace("{csv}", quoted(csv)).replace("{into}", quoted(into));
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
