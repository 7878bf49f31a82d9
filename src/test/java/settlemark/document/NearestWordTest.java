package settlemark.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class NearestWordTest {
    private static final List<String> WORDS = List.of("baud", "data-bits", "parity", "stop-bits", "flow", "id");

    @ParameterizedTest
    @CsvSource({
        "buad, baud",
        "Baud, baud",
        "databits, data-bits",
        "data_bits, data-bits",
        "stopbits, stop-bits",
        "party, parity",
        "flwo, flow",
        "ID, id"
    })
    void findsWhatWasMeant(String typed, String meant) {
        assertThat(NearestWord.to(typed, WORDS)).contains(meant);
    }

    @ParameterizedTest
    @CsvSource({"colour", "x", "speed", "ab"})
    void staysSilentWhereNothingIsNear(String typed) {
        assertThat(NearestWord.to(typed, WORDS)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"100000"})
    void doesNotCompareTextsWithoutEnd(int length) {
        assertThat(NearestWord.to("b".repeat(length), WORDS)).isEmpty();
    }
}
