package settlemark.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import org.jspecify.annotations.Nullable;

/** A row that was read to its end. A column that does not hold what its table says is damaged: asking for it throws. */
final class StoredRow {
    private final @Nullable Object[] values;

    private StoredRow(@Nullable Object[] values) {
        this.values = values;
    }

    static StoredRow of(ResultSet row, int columns) throws SQLException {
        @Nullable Object[] values = new Object[columns];
        for (int i = 0; i < columns; i++) {
            values[i] = row.getObject(i + 1);
        }
        return new StoredRow(values);
    }

    /** @param column from 0 */
    long number(int column) {
        if (values[column] instanceof Number number && !(number instanceof Double)) {
            return number.longValue();
        }
        throw wrong(column, "a whole number");
    }

    byte[] bytes(int column) {
        if (values[column] instanceof byte[] bytes) {
            return bytes;
        }
        throw wrong(column, "bytes");
    }

    String text(int column) {
        if (values[column] instanceof String text) {
            return text;
        }
        throw wrong(column, "text");
    }

    @Nullable
    Object value(int column) {
        return values[column];
    }

    int columns() {
        return values.length;
    }

    private IllegalArgumentException wrong(int column, String expected) {
        Object value = values[column];
        String got = value == null ? "nothing" : value instanceof byte[] bytes ? bytes.length + " bytes" : "" + value;
        return new IllegalArgumentException("column " + column + " must hold " + expected + ", holds " + got);
    }
}
