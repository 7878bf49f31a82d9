package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;
import settlemark.session.Span;
import settlemark.session.StoreException;

/**
 * Reads every row of a table that can be read, past pages that cannot. Rows are asked for by stretches of their first
 * key, without any index. A stretch that fails is read from both ends, and what is left of it key by key; where a key has
 * many rows, it is cut in two until only single keys fail, and those are read from both ends.
 */
final class RowScan {
    private static final int KEYS_AT_ONCE = 64;

    /** After so many keys in a row that cannot be read, and no known end, there is none. */
    private static final int MOST_FAILING = 1 << 16;

    /** What lies behind so many lost keys is no leaf between lost leaves, and is found by its ends. */
    private static final int MOST_ONE_BY_ONE = 1 << 12;

    private static final int SMALLEST_ROW_BYTES = 16;

    private static final long NOT_KNOWN = Long.MAX_VALUE - 1;

    /** Pages of a table that are within the file and cannot be understood, and rows on those that can. */
    private static final String REACHABLE = "SELECT coalesce(sum(pagetype NOT IN ('leaf', 'internal', 'overflow') AND"
            + " pageno <= (SELECT page_count FROM pragma_page_count)), 1), coalesce(sum(ncell) FILTER (WHERE pagetype ="
            + " 'leaf'), 0) FROM dbstat WHERE name = ?";

    private final Connection connection;
    private final String table;
    private final String select;
    private final String key;
    private final String order;
    private final boolean oneRowAKey;
    private final int columns;
    private final List<Span> unread = new ArrayList<>();
    private long found;

    /**
     * @param order columns of the primary key, the first a whole number; they are the first ones of each row
     * @param others further columns
     */
    RowScan(Connection connection, String table, List<String> order, List<String> others) {
        this.connection = connection;
        this.table = table;
        this.key = order.get(0);
        this.order = String.join(", ", order);
        this.oneRowAKey = order.size() == 1;
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
        long low = bound("min").orElse(0);
        OptionalLong end = bound("max");
        if (end.isPresent()) {
            everyStretch(low, end.getAsLong(), Long.MAX_VALUE, taker);
        } else {
            everyStretch(low, mostRows(), reachable(), taker);
        }
    }

    /** @param most there are no more rows than so many on pages that are in the file; a bound only where the end is lost */
    private void everyStretch(long low, long high, long most, Taker taker) throws SQLException, StoreException {
        boolean endLost = most < Long.MAX_VALUE;
        try (Ways ways = new Ways()) {
            for (long from = low; from <= high; from += KEYS_AT_ONCE) {
                if (endLost && (found >= most || failing() > MOST_FAILING)) {
                    lost(from, from);
                    return;
                }
                stretch(ways, from, Math.min(high, from + KEYS_AT_ONCE - 1), taker);
            }
        }
    }

    private long failing() {
        Span last = unread.isEmpty() ? new Span(0, -1) : unread.get(unread.size() - 1);
        return last.toNanos() - last.fromNanos();
    }

    /** Those whose first key is from one to another, both included. */
    void between(long low, long high, Taker taker) throws SQLException, StoreException {
        try (Ways ways = new Ways()) {
            stretch(ways, low, high, taker);
        }
    }

    private void stretch(Ways ways, long low, long high, Taker taker) throws SQLException, StoreException {
        List<StoredRow> rows = new ArrayList<>();
        boolean all = ways.read(low, high, false, rows);
        if (!all && !oneRowAKey && low < high && !farLost()) {
            long middle = low + (high - low) / 2;
            stretch(ways, low, middle, taker);
            stretch(ways, middle + 1, high, taker);
            return;
        }
        if (!all) {
            fromTheEnd(ways, low, high, rows);
        }
        found += rows.size();
        for (StoredRow row : rows) {
            taker.take(row);
        }
    }

    /** Whether its key can be read, and only the rest of the row cannot. */
    private boolean isThere(long at) throws SQLException {
        String query = "SELECT count(*) FROM " + table + " NOT INDEXED WHERE " + key + " = ?";
        try {
            return ResultReader.count(connection, query, at) > 0;
        } catch (SQLException e) {
            requireDamage(e);
            return false;
        }
    }

    private void fromTheEnd(Ways ways, long low, long high, List<StoredRow> rows) throws SQLException {
        List<StoredRow> last = new ArrayList<>();
        ways.read(low, high, true, last);
        Collections.reverse(last);
        long from = rows.isEmpty() ? low : rows.get(rows.size() - 1).number(0);
        long to = last.isEmpty() ? high : last.get(0).number(0);
        if (farLost() || !oneRowAKey) {
            lost(from, to);
        } else {
            keys(ways, rows.isEmpty() ? from : from + 1, last.isEmpty() ? to : to - 1, rows);
        }
        rows.addAll(last);
    }

    /** Whether so much in a row is lost that only the ends of stretches are still asked for. */
    private boolean farLost() {
        return failing() > MOST_ONE_BY_ONE;
    }

    /** One after the other: within what is lost there may be pages that are not. */
    private void keys(Ways ways, long from, long to, List<StoredRow> into) throws SQLException {
        for (long at = from; at <= to; at++) {
            if (!ways.read(at, at, false, into)) {
                lost(at, at);
                found += isThere(at) ? 1 : 0;
            }
        }
    }

    private void lost(long from, long to) {
        int last = unread.size() - 1;
        if (last >= 0 && unread.get(last).toNanos() >= from - 1) {
            unread.set(last, new Span(unread.get(last).fromNanos(), to));
        } else {
            unread.add(new Span(from, to));
        }
    }

    /** The two questions. They are prepared once, and again after one that failed, which ends it for the driver. */
    private final class Ways implements AutoCloseable {
        private @Nullable PreparedStatement forwards;
        private @Nullable PreparedStatement backwards;

        /** Adds what can be read before something cannot; returns whether it was all. */
        boolean read(long low, long high, boolean back, List<StoredRow> into) throws SQLException {
            PreparedStatement statement = question(back);
            statement.setLong(1, low);
            statement.setLong(2, high);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    into.add(StoredRow.of(row, columns));
                }
                return true;
            } catch (SQLException e) {
                requireDamage(e);
                forget(back);
                return false;
            }
        }

        private PreparedStatement question(boolean back) throws SQLException {
            PreparedStatement known = back ? backwards : forwards;
            if (known != null) {
                return known;
            }
            String sorted = back ? order.replace(",", " DESC,") + " DESC" : order;
            PreparedStatement made = connection.prepareStatement(select + sorted);
            if (back) {
                backwards = made;
            } else {
                forwards = made;
            }
            return made;
        }

        private void forget(boolean back) throws SQLException {
            question(back).close();
            if (back) {
                backwards = null;
            } else {
                forwards = null;
            }
        }

        @Override
        public void close() throws SQLException {
            for (PreparedStatement statement : Arrays.asList(forwards, backwards)) {
                if (statement != null) {
                    statement.close();
                }
            }
        }
    }

    /** Empty where it cannot be read. */
    private OptionalLong bound(String which) throws SQLException {
        String query = "SELECT coalesce(" + which + "(" + key + "), " + (which.equals("min") ? 0 : -1) + ") FROM "
                + table + " NOT INDEXED";
        try {
            return OptionalLong.of(ResultReader.count(connection, query));
        } catch (SQLException e) {
            requireDamage(e);
            return OptionalLong.empty();
        }
    }

    /**
     * Rows on the pages of a file that was cut off: when so many were met, the rest is beyond the cut, and nothing more
     * need be asked for. More than there can be where that is not known, as a page within the file is destroyed.
     */
    private long reachable() throws SQLException {
        if (!oneRowAKey) {
            return NOT_KNOWN;
        }
        try (PreparedStatement select = connection.prepareStatement(REACHABLE)) {
            select.setString(1, table);
            try (ResultSet row = select.executeQuery()) {
                return row.next() && row.getLong(1) == 0 ? row.getLong(2) : NOT_KNOWN;
            }
        } catch (SQLException e) {
            requireDamage(e);
            return NOT_KNOWN;
        }
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
