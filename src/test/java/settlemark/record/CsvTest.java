package settlemark.record;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.ByteArrayOutputStream;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import settlemark.job.Clocking;
import settlemark.job.Fuel;
import settlemark.job.JobState;
import settlemark.job.StepState;
import settlemark.session.JobRecord;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

class CsvTest {
    private static List<NamedCsvRecord> readings(AshLane job) throws Exception {
        StringWriter text = new StringWriter();
        new ReadingsCsv(job.record()).write(text);
        return CsvReader.builder().ofNamedCsvRecord(text.toString()).stream().toList();
    }

    @Test
    void everyChannelOfEveryReadingComesBackWithAllItsDigits() throws Exception {
        JobRecord record = AshLane.job().record();
        List<NamedCsvRecord> lines = readings(AshLane.job());
        int at = 0;
        for (StepState step : record.job().steps()) {
            for (StageReading reading : step.readings()) {
                for (ChannelReading channel : reading.channels()) {
                    NamedCsvRecord line = next(lines, at++);
                    while (!line.getField("role").equals(channel.role().word())) {
                        line = next(lines, at++);
                    }
                    assertThat(line.getField("step")).isEqualTo(step.key());
                    assertThat(line.getField("purpose")).isEqualTo(reading.purpose());
                    assertThat(Double.parseDouble(line.getField("value"))).isEqualTo(channel.value());
                    assertThat(line.getField("unit_ucum"))
                            .isEqualTo(channel.unit().code());
                    assertThat(Double.parseDouble(line.getField("expanded_uncertainty_k2")))
                            .isEqualTo(2 * channel.standardUncertainty());
                    assertThat(OffsetDateTime.parse(line.getField("window_end")).toInstant())
                            .isEqualTo(record.header().startedAt().plusNanos(channel.toNanos()));
                    assertThat(line.getField("detector")).isEqualTo(channel.reason());
                    assertThat(line.getField("origin")).isEqualTo("SIMULATED");
                }
            }
        }
        assertThat(lines).hasSizeGreaterThan(at - 1);
    }

    private static NamedCsvRecord next(List<NamedCsvRecord> lines, int index) {
        assertThat(lines).hasSizeGreaterThan(index);
        return lines.get(index);
    }

    @Test
    void verdictsStandBesideTheirValues() throws Exception {
        List<NamedCsvRecord> lines = readings(AshLane.job());
        NamedCsvRecord manifold = only(lines, "found-high", "manifold");
        assertThat(manifold.getField("outcome")).isEqualTo("outside");
        assertThat(manifold.getField("limit_low")).isEqualTo("3.15");
        assertThat(manifold.getField("limit_high")).isEqualTo("3.85");
        assertThat(manifold.getField("limit_source")).isEqualTo("plate");
        assertThat(manifold.getField("by_hand")).isEqualTo("yes");
        assertThat(manifold.getField("by_hand_reason")).isEqualTo("supply still creeping, customer waits");
        NamedCsvRecord rise = only(lines, "found-high", "rise");
        assertThat(Double.parseDouble(rise.getField("value"))).isEqualTo(118.0 - 70.8);
        assertThat(rise.getField("unit_ucum")).isEqualTo("[degF]");
        assertThat(only(lines, "shut", "manifold").getField("limit_low")).isEmpty();
        assertThat(only(lines, "found-high", "supply").getField("settled")).isEqualTo("no");
        assertThat(only(lines, "close", "inlet zero drift").getField("outcome")).isEqualTo("inside");
        assertThat(lines.stream().filter(l -> l.getField("purpose").equals("adjusted")))
                .allSatisfy(l -> assertThat(l.getField("outcome")).isEmpty());
    }

    private static NamedCsvRecord only(List<NamedCsvRecord> lines, String step, String role) {
        List<NamedCsvRecord> found = lines.stream()
                .filter(l ->
                        l.getField("step").equals(step) && l.getField("role").equals(role))
                .toList();
        assertThat(found).hasSize(1);
        return found.get(0);
    }

    @Test
    void samplesAreInTheirChannelsOwnUnitWithTimeAndStatus() throws Exception {
        JobRecord record = AshLane.job().record();
        ByteArrayOutputStream text = new ByteArrayOutputStream();
        new SamplesCsv(record.header()).write(text, AshLane.samples());
        List<NamedCsvRecord> lines =
                CsvReader.builder().ofNamedCsvRecord(text.toString(StandardCharsets.UTF_8)).stream()
                        .toList();
        int channels = record.header().probes().stream()
                .mapToInt(p -> p.channels().size())
                .sum();
        assertThat(lines).hasSize(3 * channels);
        NamedCsvRecord second = lines.get(1);
        assertThat(second.getField("time")).isEqualTo("2026-11-25T10:02:00.350-05:00");
        assertThat(second.getField("session_seconds")).isEqualTo("0.100000000");
        assertThat(second.getField("probe")).isEqualTo("gauge");
        assertThat(second.getField("channel")).isEqualTo("port-1");
        assertThat(second.getField("role")).isEqualTo("inlet");
        assertThat(second.getField("value")).isEqualTo("-1.5");
        assertThat(second.getField("unit_ucum")).isEqualTo("[in_i'H2O]");
        assertThat(second.getField("status")).isEqualTo("ok");
        NamedCsvRecord broken = lines.get(2);
        assertThat(broken.getField("value")).isEmpty();
        assertThat(broken.getField("status")).isEqualTo("open_circuit");
        assertThat(broken.getField("session_seconds")).isEqualTo("3600.123456789");
        assertThat(lines.stream().filter(l -> l.getField("probe").equals("air")).map(l -> l.getField("unit_ucum")))
                .contains("Cel");
    }

    @Test
    void textIsNeverAFormula() {
        for (String start : List.of("=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "\n=1")) {
            assertThat(Cells.text(start)).isEqualTo("'" + start);
        }
        assertThat(Cells.text("1-1")).isEqualTo("1-1");
        assertThat(Cells.text("")).isEmpty();
    }

    @Test
    void aReasonThatLooksLikeAFormulaIsDisarmedInTheFile() throws Exception {
        StringWriter text = new StringWriter();
        JobRecord record = AshLane.job().record();
        StepState high = record.job().step("found-high").orElseThrow();
        StageReading reading = high.readings().get(0);
        StageReading formula = new StageReading(
                reading.step(), "=2+3", reading.timeNanos(), true, "@cmd, \"quoted\"", reading.channels());
        StepState step = new StepState(
                high.key(),
                high.step(),
                high.progress(),
                false,
                false,
                0,
                0,
                0,
                List.of(formula),
                List.of(),
                high.ticked(),
                List.of(),
                List.of(),
                "",
                "",
                Clocking.none(Fuel.NATURAL_GAS),
                Map.of());
        JobState job =
                new JobState(record.job().plan(), record.job().plate(), List.of(step), 1, Map.of(), "", List.of());
        new ReadingsCsv(new JobRecord(record.header(), job, List.of(), List.of(), List.of())).write(text);
        NamedCsvRecord line = CsvReader.builder().ofNamedCsvRecord(text.toString()).stream()
                .findFirst()
                .orElseThrow();
        assertThat(line.getField("purpose")).isEqualTo("'=2+3");
        assertThat(line.getField("by_hand_reason")).isEqualTo("'@cmd, \"quoted\"");
    }
}
