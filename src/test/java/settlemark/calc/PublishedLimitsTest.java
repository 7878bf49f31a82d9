package settlemark.calc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.measure.Unit;

/** Published limits, each against a row written down from its source apart from the program. */
class PublishedLimitsTest {
    static List<NamedCsvRecord> rows() throws IOException {
        try (Reader reader = new InputStreamReader(
                        Objects.requireNonNull(PublishedLimitsTest.class.getResourceAsStream("limits.csv")),
                        StandardCharsets.UTF_8);
                CsvReader<NamedCsvRecord> csv = CsvReader.builder().ofNamedCsvRecord(reader)) {
            return csv.stream().toList();
        }
    }

    @ParameterizedTest
    @MethodSource("rows")
    void theLimitIsThePublishedOne(NamedCsvRecord row) {
        PublishedLimit limit = PublishedLimits.find(row.getField("name")).orElseThrow();
        Unit unit = Calls.unit(row.getField("unit"));
        assertThat(limit.unit()).isEqualTo(unit);
        assertThat(limit.lower()).isEqualTo(figure(row.getField("lower")));
        assertThat(limit.nominal()).isEqualTo(figure(row.getField("nominal")));
        assertThat(limit.upper()).isEqualTo(figure(row.getField("upper")));
        assertThat(limit.fromMemory()).isEqualTo(row.getField("status").equals("memory"));
        assertThat(row.getField("source")).isNotBlank();
    }

    private static Optional<Double> figure(String text) {
        return text.isBlank() ? Optional.empty() : Optional.of(Double.valueOf(text));
    }

    @Test
    void noLimitIsWithoutARowAndNoNameIsTwice() throws IOException {
        List<String> names =
                PublishedLimits.all().stream().map(PublishedLimit::name).toList();
        assertThat(names)
                .doesNotHaveDuplicates()
                .containsExactlyInAnyOrderElementsOf(
                        rows().stream().map(row -> row.getField("name")).toList());
    }

    @Test
    void aLimitWithoutSourceOrFigureIsRefused() {
        Unit unit = Unit.PASCAL;
        Optional<Double> none = Optional.empty();
        assertThatThrownBy(() -> new PublishedLimit("x", Optional.of(1.0), none, none, unit, " ", false))
                .hasMessageContaining("needs a source");
        assertThatThrownBy(() -> new PublishedLimit("x", none, none, none, unit, "here", false))
                .hasMessageContaining("no figure");
    }
}
