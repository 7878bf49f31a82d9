package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.session.StoreException;

final class SettingsTest {
    @TempDir
    Path folder;

    private Path file() {
        return folder.resolve("w.settlemark");
    }

    @Test
    void settingsStayAndAreReplacedAndRemoved() throws StoreException {
        try (SqliteStore store = Fixtures.open(file())) {
            assertThat(store.settings().get("size")).isEmpty();
            store.settings().put("size", "1.25");
            store.settings().put("gauges", "{\"a\": [1, true, null, \"\u00fc\"]}");
            store.settings().put("size", "1.5");
        }
        try (SqliteStore store = Fixtures.open(file())) {
            assertThat(store.settings().get("size")).contains("1.5");
            assertThat(store.settings().all())
                    .containsExactly(
                            java.util.Map.entry("gauges", "{\"a\": [1, true, null, \"\u00fc\"]}"),
                            java.util.Map.entry("size", "1.5"));
            assertThat(store.settings().remove("size")).isTrue();
            assertThat(store.settings().remove("size")).isFalse();
            assertThat(store.settings().all()).containsOnlyKeys("gauges");
        }
    }

    @Test
    void whatIsNotJsonIsRefused() throws Exception {
        try (SqliteStore store = Fixtures.open(file())) {
            assertThatThrownBy(() -> store.settings().put("size", "large"))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("size")
                    .hasMessageContaining("large");
            assertThat(store.settings().all()).isEmpty();
        }
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file())) {
            assertThatThrownBy(() -> Connections.run(connection, "INSERT INTO setting VALUES ('size', 'large')"))
                    .hasMessageContaining("json_valid");
        }
    }

    @Test
    void aStoreForReadingChangesNoSetting() throws StoreException {
        Fixtures.open(file()).close();
        try (SqliteStore store = SqliteStore.openForReading(file(), Fixtures::profile)) {
            assertThatThrownBy(() -> store.settings().put("size", "1")).isInstanceOf(IllegalStateException.class);
        }
    }
}
