package settlemark.calc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.measure.Quantity;

/** Tables, worked examples and open libraries, each with its source in the file; "u" before a figure: the uncertainty. */
class FurtherValuesTest {
    private static final String UNCERTAINTY = "u ";

    static List<NamedCsvRecord> rows() throws IOException {
        try (Reader reader = new InputStreamReader(
                        Objects.requireNonNull(FurtherValuesTest.class.getResourceAsStream("further-values.csv")),
                        StandardCharsets.UTF_8);
                CsvReader<NamedCsvRecord> csv = CsvReader.builder().ofNamedCsvRecord(reader)) {
            return csv.stream().toList();
        }
    }

    @ParameterizedTest
    @MethodSource("rows")
    void theFormulaGivesTheValueFromOutside(NamedCsvRecord row) throws RefusedInputException {
        String expected = row.getField("expected");
        Quantity found = found(row);
        boolean uncertain = expected.startsWith(UNCERTAINTY);
        double figure = Double.parseDouble(uncertain ? expected.substring(UNCERTAINTY.length()) : expected);
        assertThat(row.getField("source")).isNotBlank();
        assertThat(uncertain ? found.standardUncertainty() : found.value())
                .as(row.getField("call") + ", by " + row.getField("source") + " (" + row.getField("status") + ")")
                .isCloseTo(figure, within(Double.parseDouble(row.getField("tolerance"))));
    }

    private static Quantity found(NamedCsvRecord row) throws RefusedInputException {
        String call = row.getField("call");
        if (call.startsWith("convert|")) {
            Quantity value = Calls.inputs(call).numbers().get("value");
            return Objects.requireNonNull(value).to(Calls.unit(row.getField("unit")));
        }
        return Calls.call(call).in(Calls.unit(row.getField("unit"))).quantity();
    }

    @Test
    void theyAreMoreThanForty() throws IOException {
        assertThat(rows()).hasSizeGreaterThanOrEqualTo(100);
    }

    /** The standard gives volumes at 15 degC; a real gas of the same volume has more moles by 1/Z (ISO 14912). */
    private static String byMole(String volumes) {
        StringBuilder call = new StringBuilder();
        double sum = 0;
        for (String part : volumes.split("\\|", -1)) {
            sum += moles(part);
        }
        for (String part : volumes.split("\\|", -1)) {
            call.append('|')
                    .append(part.split("=", -1)[0])
                    .append('=')
                    .append(100 * moles(part) / sum)
                    .append(" %");
        }
        return call.toString();
    }

    private static double moles(String part) {
        String[] pair = part.replace(" %", "").split("=", -1);
        double factor = Arrays.stream(GasComponent.values())
                .filter(component -> component.key.equals(pair[0]))
                .findFirst()
                .orElseThrow()
                .summationFactor;
        return Double.parseDouble(pair[1]) / (1 - factor * factor);
    }

    /** Figures from memory meet what the composition gives by ISO 6976, to what EN 437 rounds and its older edition moves. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "G20; methane=100 %",
                "G21; methane=87 %|propane=13 %",
                "G222; methane=77 %|hydrogen=23 %",
                "G23; methane=92.5 %|nitrogen=7.5 %",
                "G24; methane=68 %|propane=12 %|hydrogen=20 %",
                "G25; methane=86 %|nitrogen=14 %",
                "G26; methane=80 %|propane=7 %|nitrogen=13 %",
                "G27; methane=82 %|nitrogen=18 %",
                "G30; n-butane=50 %|i-butane=50 %",
                "G31; propane=100 %",
                "G32; propene=100 %"
            })
    void aTestGasMeetsItsComposition(String gas, String composition) throws RefusedInputException {
        for (String basis : List.of("gross", "net")) {
            double named = value("test-gas-heating-value|gas=" + gas + "|basis=" + basis);
            double mixed = value("composition-heating-value" + byMole(composition) + "|basis=" + basis);
            assertThat(mixed / named).as(basis).isCloseTo(1, within(0.002));
        }
        double named = value("test-gas-relative-density|gas=" + gas);
        double mixed = value("composition-relative-density" + byMole(composition));
        assertThat(mixed / named).isCloseTo(1, within(0.002));
    }

    private static double value(String call) throws RefusedInputException {
        return Calls.call(call).quantity().value();
    }

    @Test
    void aFigureFromMemorySaysSo() throws RefusedInputException {
        assertThat(Calls.call("test-gas-wobbe|gas=G20|basis=net").warnings())
                .anyMatch(warning -> warning.contains("from memory"));
        assertThat(Calls.call("test-gas-wobbe|gas=G23|basis=net").warnings()).isEmpty();
    }
}
