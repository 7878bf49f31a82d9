package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.junit.jupiter.api.Test;

/** A damaged file holds anything anywhere: a column of another kind is refused with what it holds. */
final class StoredRowTest {
    private static StoredRow row() throws SQLException {
        try (Connection memory = DriverManager.getConnection("jdbc:sqlite::memory:");
                Statement statement = memory.createStatement();
                ResultSet row = statement.executeQuery("SELECT 7, 1.5, 'word', x'0102', NULL")) {
            row.next();
            return StoredRow.of(row, 5);
        }
    }

    @Test
    void whatIsOfTheRightKindIsGiven() throws Exception {
        assertThat(row().number(0)).isEqualTo(7);
        assertThat(row().text(2)).isEqualTo("word");
        assertThat(row().bytes(3)).containsExactly(1, 2);
        assertThat(row().value(4)).isNull();
        assertThat(row().columns()).isEqualTo(5);
    }

    @Test
    void whatIsOfAnotherKindIsRefusedWithWhatItHolds() throws Exception {
        StoredRow row = row();
        assertThatThrownBy(() -> row.number(1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("column 1 must hold a whole number, holds 1.5");
        assertThatThrownBy(() -> row.number(2)).hasMessage("column 2 must hold a whole number, holds word");
        assertThatThrownBy(() -> row.bytes(2)).hasMessage("column 2 must hold bytes, holds word");
        assertThatThrownBy(() -> row.text(3)).hasMessage("column 3 must hold text, holds 2 bytes");
        assertThatThrownBy(() -> row.text(4)).hasMessage("column 4 must hold text, holds nothing");
    }
}
