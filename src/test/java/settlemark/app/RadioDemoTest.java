package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import settlemark.cli.Program;
import settlemark.link.RadioBench;
import settlemark.session.SessionHeader;
import settlemark.store.SqliteStore;

/** The whole job with the gauge on one adapter and the program on another. */
final class RadioDemoTest {
    @TempDir
    private Path folder = Path.of("");

    @Test
    @Timeout(300)
    void aWholeJobByRadioEndsInARecordThatAgreesWithTheTruth() throws Exception {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        try (RadioBench bench = new RadioBench()) {
            Program.Demo request = new Program.Demo(
                    true,
                    7,
                    Optional.of(folder.resolve("w.settlemark")),
                    Optional.of(folder.resolve("records")),
                    false,
                    0,
                    0,
                    1,
                    Optional.of(new Program.Air("hci1", Optional.empty())),
                    Optional.empty(),
                    java.util.List.of());
            int code = new Settlemark(new BenchRadio(bench)).demo(request, new PrintWriter(out), new PrintWriter(err));
            assertThat(code).as(err + "\n" + out).isZero();
        }
        assertThat(err.toString())
                .containsPattern("[1-9][0-9]{3,} values went by the radio, 0 were lost")
                .containsPattern("[1-9][0-9]* readings against what was really so: all within their uncertainty");
        assertThat(out.toString()).contains("SIMULATED", ".pdf");
        try (SqliteStore store = Workspaces.reading(Optional.of(folder.resolve("w.settlemark")))) {
            SessionHeader header = store.header(1);
            assertThat(header.probes()).singleElement().satisfies(probe -> {
                assertThat(probe.address()).hasToString("ble:" + RadioBench.SERVED + "@hci0");
                assertThat(probe.identity()).isEqualTo(RadioBench.SERVED);
                assertThat(probe.profile().id()).isEqualTo("demo-set-ble");
            });
            assertThat(store.readings(1)).hasSizeGreaterThan(4);
        }
    }
}
