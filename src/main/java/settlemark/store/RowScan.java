package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import settlemark.session.Span;
import settlemark.session.StoreException;

/**
 * Reads every row of a table that can be read, past pages that cannot. Rows are asked for by stretches of their first
 * key, without any index; a stretch that fails is cut in two until only single keys fail, and where a key has many rows,
 * those are read from both ends.
 */
final class RowScan {
    private static final int KEYS_AT_ONCE = 64;

    /** After so many keys in a row that cannot be read, and no known end, there is none. */
    private static final int MOST_FAILING = 1 << 16;

    private static final int SMALLEST_ROW_BYTES = 16;

    private final Connection connection;
    private final String table;
    private final String select;
    private final String key;
    private final String order;
    private final int columns;
    private final List<Span> unread = new ArrayList<>();

    /**
     * @param order columns of the primary key, the first a whole number; they are the first ones of each row
     * @param others further columns
     */
    RowScan(Connection connection, String table, List<String> order, List<String> others) {
        this.connection = connection;
        this.table = table;
        this.key = order.get(0);
        this.order = String.join(", ", order);
        List<String> all = new ArrayList<>(order);
        all.addAll(others);
        this.columns = all.size();
        this.select = "SELECT " + String.join(", ", all) + " FROM " + table + " NOT INDEXED WHERE " + key
                + " BETWEEN ? AND ? ORDER BY ";
    }

    @FunctionalInterface
    interface Taker {
        void take(StoredRow row) throws SQLException, StoreException;
    }

    /** Stretches of the first key, both ends included, in which something could not be read. */
    List<Span> unread() {
        return List.copyOf(unread);
    }

    /** Every row, in the order of the first key. */
    void all(Taker taker) throws SQLException, StoreException {
        long low;
        long high;
        boolean known = true;
        try {
            low = bound("min");
            high = bound("max");
        } catch (SQLException e) {
            requireDamage(e);
            known = false;
            low = 0;
            high = mostRows();
        }
        for (long from = low; from <= high; from += KEYS_AT_ONCE) {
            between(from, Math.min(high, from + KEYS_AT_ONCE - 1), taker);
            if (!known && failing() > MOST_FAILING) {
                return;
            }
        }
    }

    private long failing() {
        Span last = unread.isEmpty() ? new Span(0, -1) : unread.get(unread.size() - 1);
        return last.toNanos() - last.fromNanos();
    }

    /** Those whose first key is from one to another, both included. */
    void between(long low, long high, Taker taker) throws SQLException, StoreException {
        List<StoredRow> rows = new ArrayList<>();
        try {
            read(low, high, false, rows);
        } catch (SQLException e) {
            requireDamage(e);
            if (low < high) {
                long middle = low + (high - low) / 2;
                between(low, middle, taker);
                between(middle + 1, high, taker);
                return;
            }
            rows = fromBothEnds(low);
            lost(low);
        }
        for (StoredRow row : rows) {
            taker.take(row);
        }
    }

    private void lost(long at) {
        int last = unread.size() - 1;
        if (last >= 0 && unread.get(last).toNanos() == at - 1) {
            unread.set(last, new Span(unread.get(last).fromNanos(), at));
        } else {
            unread.add(new Span(at, at));
        }
    }

    private List<StoredRow> fromBothEnds(long at) throws SQLException {
        List<StoredRow> rows = new ArrayList<>(untilItFails(at, false));
        if (order.equals(key)) {
            return rows;
        }
        List<StoredRow> others = untilItFails(at, true);
        for (int i = others.size() - 1; i >= 0; i--) {
            rows.add(others.get(i));
        }
        return rows;
    }

    private List<StoredRow> untilItFails(long at, boolean backwards) throws SQLException {
        List<StoredRow> rows = new ArrayList<>();
        try {
            read(at, at, backwards, rows);
        } catch (SQLException e) {
            requireDamage(e);
        }
        return rows;
    }

    private void read(long low, long high, boolean backwards, List<StoredRow> into) throws SQLException {
        String sorted = backwards ? order.replace(",", " DESC,") + " DESC" : order;
        try (PreparedStatement statement = connection.prepareStatement(select + sorted)) {
            statement.setLong(1, low);
            statement.setLong(2, high);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    into.add(StoredRow.of(row, columns));
                }
            }
        }
    }

    private long bound(String which) throws SQLException {
        String query = "SELECT coalesce(" + which + "(" + key + "), " + (which.equals("min") ? 0 : -1) + ") FROM "
                + table + " NOT INDEXED";
        return ResultReader.count(connection, query);
    }

    /** More rows than this do not fit into the file. */
    private long mostRows() throws SQLException {
        return ResultReader.count(connection, "PRAGMA page_count")
                * ResultReader.count(connection, "PRAGMA page_size")
                / SMALLEST_ROW_BYTES;
    }

    /** Passes on what is no damage, such as a program that holds the file. */
    static void requireDamage(SQLException e) throws SQLException {
        switch (Failures.code(e)) {
            case SQLITE_CORRUPT, SQLITE_IOERR, SQLITE_NOTADB, SQLITE_FORMAT, SQLITE_TOOBIG, SQLITE_NOMEM -> {}
            default -> throw e;
        }
    }
}
