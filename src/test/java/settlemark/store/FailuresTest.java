package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.SQLException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import settlemark.session.StoreException;

/** Each result code of SQLite (sqlite.org/rescode.html) becomes what a person can act on. */
final class FailuresTest {
    private final Failures failures = new Failures(Path.of("folder", "w.settlemark"));

    @ParameterizedTest
    @CsvSource({
        "13, FAULT, the disk is full",
        "26, DAMAGED, it is not a workspace",
        "11, DAMAGED, it is damaged",
        "267, DAMAGED, it is damaged",
        "8, FAULT, the file or its folder is read-only",
        "3, FAULT, the file or its folder is read-only",
        "14, FAULT, the system does not let it be opened",
        "5, FAULT, another program holds it",
        "6, FAULT, another program holds it",
        "10, FAULT, the disk refused",
        "4874, FAULT, the disk refused",
        "1, FAULT, (words of the library)"
    })
    void aCodeIsToldWithTheFileAndWhatWasTried(int code, StoreException.Cause kind, String words) {
        StoreException told = failures.of("cannot be opened", new SQLException("words of the library", "", code));
        assertThat(told.kind()).isEqualTo(kind);
        assertThat(told)
                .hasMessageContaining("w.settlemark")
                .hasMessageContaining("cannot be opened")
                .hasMessageContaining(words);
    }

    @ParameterizedTest
    @ValueSource(ints = {19, 20, 21, 25, 1555})
    void aMistakeOfTheProgramIsNotToldAsTheFiles(int code) {
        assertThatThrownBy(() -> failures.of("cannot be opened", new SQLException("words", "", code)))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("w.settlemark");
    }
}
