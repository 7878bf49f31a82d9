package settlemark.calc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.measure.Unit;

/** Values that were published or follow from published formulas, each with its source in the file beside it. */
class CheckValuesTest {
    /** Published in a unit that has no code: the factor from SI to it. */
    private static final double BTU_PER_HOUR_CFM_DEGREE =
            Unit.ucum("[cft_i]/min").to(Unit.ucum("m3/s")).slope()
                    / Unit.ucum("[Btu_IT]/h").to(Unit.ucum("W")).slope()
                    / 1.8;

    private static final double INCH_PER_FAHRENHEIT =
            1 / Unit.INCH_OF_WATER.to(Unit.PASCAL).slope() / 1.8;

    static List<NamedCsvRecord> rows() throws IOException {
        try (Reader reader = new InputStreamReader(
                        Objects.requireNonNull(CheckValuesTest.class.getResourceAsStream("check-values.csv")),
                        StandardCharsets.UTF_8);
                CsvReader<NamedCsvRecord> csv = CsvReader.builder().ofNamedCsvRecord(reader)) {
            return csv.stream().toList();
        }
    }

    @ParameterizedTest
    @MethodSource("rows")
    void theFormulaGivesThePublishedValue(NamedCsvRecord row) throws RefusedInputException {
        Result result = Calls.call(row.getField("call"));
        assertThat(row.getField("source")).isNotBlank();
        assertThat(in(row.getField("unit"), result))
                .as(row.getField("call") + ", by " + row.getField("source") + " (" + row.getField("status") + ")")
                .isCloseTo(
                        Double.parseDouble(row.getField("expected")),
                        within(Double.parseDouble(row.getField("tolerance"))));
    }

    @Test
    void theFileHoldsThemAll() throws IOException {
        assertThat(rows()).hasSize(234);
    }

    private static double in(String unit, Result result) {
        return switch (unit) {
            case "Btu/(h cfm degF)", "Btu/(h cfm F)" -> result.quantity().value() * BTU_PER_HOUR_CFM_DEGREE;
            case "inH2O/degF" -> result.quantity().value() * INCH_PER_FAHRENHEIT;
            case "-", "1" -> result.in(Unit.ucum("1")).quantity().value();
            case "psia" -> result.in(Unit.ucum("[psi]")).quantity().value();
            case "m3/h per (mbar m3/min)" ->
                result.in(Unit.ucum("m3/h")).quantity().value();
            case "vol/vol" -> result.quantity().value();
            default -> result.in(Calls.unit(unit)).quantity().value();
        };
    }
}
