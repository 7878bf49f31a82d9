package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Statements of one connection, each prepared once. After a failure they are thrown away: the driver closes what failed. */
final class Statements implements AutoCloseable {
    private final Connection connection;
    private final Map<String, PreparedStatement> prepared = new HashMap<>();

    Statements(Connection connection) {
        this.connection = connection;
    }

    Connection connection() {
        return connection;
    }

    /** Not to be closed by whoever uses it; its rows are. */
    PreparedStatement of(String sql) throws SQLException {
        PreparedStatement known = prepared.get(sql);
        if (known == null) {
            known = connection.prepareStatement(sql);
            prepared.put(sql, known);
        }
        return known;
    }

    /** Closes them all; who asks again gets new ones. */
    @Override
    public void close() throws SQLException {
        List<PreparedStatement> old = List.copyOf(prepared.values());
        prepared.clear();
        for (PreparedStatement statement : old) {
            statement.close();
        }
    }
}
