package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.cli.Commands;
import settlemark.cli.Program;
import settlemark.session.Instruments.Kept;
import settlemark.store.SqliteStore;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** An instrument of the workspace that a person names for a job: what becomes of its readings and of the record. */
final class InstrumentsInAJobTest {
    @TempDir
    private Path folder = Path.of("");

    private String out = "";
    private String err = "";

    private int run(String... arguments) {
        List<String> all = new ArrayList<>(List.of(arguments));
        all.addAll(List.of("--workspace", file().toString()));
        StringWriter said = new StringWriter();
        StringWriter told = new StringWriter();
        InputStream before = System.in;
        try {
            System.setIn(new ByteArrayInputStream("\n".repeat(20).getBytes(StandardCharsets.UTF_8)));
            return Commands.run(
                    new Settlemark(), new PrintWriter(said), new PrintWriter(told), all.toArray(new String[0]));
        } finally {
            System.setIn(before);
            out = said.toString();
            err = told.toString();
        }
    }

    private Path file() {
        return folder.resolve("w.settlemark");
    }

    private Path records() {
        return folder.resolve("rec");
    }

    private int job(String instrument) {
        return run(
                "job",
                "new",
                "--rig",
                "--plan",
                "supply-check",
                "--instrument",
                instrument,
                "--out",
                records().toString());
    }

    private String made(String end) throws Exception {
        try (Stream<Path> files = Files.list(records())) {
            return Files.readString(
                    files.filter(f -> f.toString().endsWith(end)).findFirst().orElseThrow());
        }
    }

    @Test
    void theRecordHoldsTheInstrumentItsMarkAndEachCorrection() throws Exception {
        assertThat(run(
                        "instruments",
                        "add",
                        "--serial",
                        "0042",
                        "--name",
                        "blue gauge",
                        "--due",
                        "2020-01-01",
                        "--point",
                        "0:0:0.01",
                        "--point",
                        "7.5:7.6:0.02"))
                .isZero();
        assertThat(job("gauge=0042")).as(err).isEqualTo(Program.DONE);
        JsonNode record = JsonMapper.builder().build().readTree(made("job.json"));
        JsonNode gauge = record.required("instruments").get(0);
        JsonNode known = gauge.required("known").get(0);
        assertThat(known.required("serial").stringValue()).isEqualTo("0042");
        assertThat(known.required("due").stringValue()).isEqualTo("2020-01-01");
        assertThat(known.required("overdue").booleanValue()).isTrue();
        assertThat(known.required("said_by_probe").booleanValue()).isFalse();
        assertThat(known.required("points").get(1).required("indicated").doubleValue())
                .isEqualTo(7.6);
        JsonNode inlet = channel(record, "this-appliance");
        double correction = inlet.required("instrument").required("correction").doubleValue();
        double indicated = inlet.required("value").doubleValue() - correction;
        assertThat(correction).isCloseTo(-0.1 * indicated / 7.6, within(1e-9));
        assertThat(inlet.required("instrument")
                        .required("correction_expanded_uncertainty")
                        .doubleValue())
                .isCloseTo(0.01 + 0.01 * indicated / 7.6, within(1e-9));
        JsonNode lockUp = channel(record, "lock-up").required("instrument");
        assertThat(lockUp.required("correction").isNull()).isTrue();
        assertThat(lockUp.required("remark").stringValue()).contains("outside the correction points, 0 to 7.6");
        assertThat(made("readings.csv")).contains("correction_added").contains(",0042,");
        try (SqliteStore store = Workspaces.reading(Optional.of(file()))) {
            Kept kept = store.instruments().find("0042").orElseThrow();
            assertThat(kept.lastUse().zeros()).hasSize(1);
            assertThat(kept.lastUse().batteryPercent())
                    .isEqualTo(gauge.required("battery_percent").doubleValue())
                    .isBetween(50.0, 100.0);
        }
        assertThat(run("instruments", "due")).isEqualTo(Program.CHECK_FAILED);
        assertThat(out).contains("0042").contains("OVERDUE");
    }

    private static JsonNode channel(JsonNode record, String step) {
        for (JsonNode one : record.required("steps")) {
            if (one.required("key").stringValue().equals(step)) {
                return one.required("readings").get(0).required("channels").get(0);
            }
        }
        throw new AssertionError("no step " + step);
    }

    @Test
    void anInstrumentOrAProbeThatIsNotThereBeginsNoJob() throws Exception {
        assertThat(job("gauge=0042")).isEqualTo(Program.USAGE);
        assertThat(err).contains("no instrument 0042").contains("instruments add");
        assertThat(run("instruments", "add", "--serial", "0042")).isZero();
        assertThat(job("gadget=0042")).isEqualTo(Program.USAGE);
        assertThat(err).contains("names probe gadget").contains("gauge, air");
        assertThat(job("gauge")).isEqualTo(Program.USAGE);
        assertThat(err).contains("PROBE=SERIAL");
        try (SqliteStore store = Workspaces.reading(Optional.of(file()))) {
            assertThat(store.sessions()).isEmpty();
        }
    }
}
