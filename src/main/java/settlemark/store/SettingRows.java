package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import settlemark.session.Settings;
import settlemark.session.StoreException;
import tools.jackson.core.JacksonException;

/** Settings as rows. */
final class SettingRows implements Settings {
    private static final String ALL = "SELECT key, value FROM setting ORDER BY key";
    private static final String PUT =
            "INSERT INTO setting (key, value) VALUES (?, ?)" + " ON CONFLICT DO UPDATE SET value = excluded.value";
    private static final String REMOVE = "DELETE FROM setting WHERE key = ?";

    private final Readers readers;
    private final Supplier<Writer> writer;

    /** @param writer throws where the workspace was opened for reading only */
    SettingRows(Readers readers, Supplier<Writer> writer) {
        this.readers = readers;
        this.writer = writer;
    }

    @Override
    public Optional<String> get(String key) throws StoreException {
        return Optional.ofNullable(all().get(key));
    }

    @Override
    public Map<String, String> all() throws StoreException {
        return readers.read(connection -> {
            Map<String, String> all = new LinkedHashMap<>();
            try (PreparedStatement select = connection.prepareStatement(ALL);
                    ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    all.put(row.getString(1), row.getString(2));
                }
            }
            return all;
        });
    }

    @Override
    public void put(String key, String json) throws StoreException {
        try {
            Json.read(json);
        } catch (JacksonException e) {
            throw new IllegalArgumentException("setting " + key + " must be JSON, got: " + json, e);
        }
        change("cannot keep setting " + key, PUT, key, json);
    }

    @Override
    public boolean remove(String key) throws StoreException {
        return change("cannot remove setting " + key, REMOVE, key) > 0;
    }

    private int change(String what, String statement, String... values) throws StoreException {
        return writer.get().commit(what, connection -> change(connection, statement, values));
    }

    private static int change(Connection connection, String statement, String... values) throws SQLException {
        try (PreparedStatement change = connection.prepareStatement(statement)) {
            for (int i = 0; i < values.length; i++) {
                change.setString(i + 1, values[i]);
            }
            return change.executeUpdate();
        }
    }
}
