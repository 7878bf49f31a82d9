package settlemark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class CaptureCommandTest {
    private final FakeProgram program = new FakeProgram();

    @TempDir
    private Path folder = Path.of("");

    @Test
    void asksForTheProbesWithTheirProfiles() {
        Path out = folder.resolve("new.capture");
        Ran ran = Ran.of(
                program,
                "capture",
                "--probe",
                "g=/dev/ttyUSB0",
                "--profile",
                "g=demo-gauge",
                "--probe",
                "demo-air=/dev/ttyUSB1",
                "--out",
                out,
                "--seconds",
                "2.5");
        assertThat(ran).isEqualTo(new Ran(0, "", ""));
        assertThat(program.asked).singleElement().isInstanceOfSatisfying(Program.Capture.class, asked -> {
            assertThat(asked.file()).isEqualTo(out);
            assertThat(asked.seconds()).isEqualTo(OptionalDouble.of(2.5));
            assertThat(asked.probes()).extracting(Program.Probe::name).containsExactly("g", "demo-air");
            assertThat(asked.probes()).extracting(p -> p.profile().id()).containsExactly("demo-gauge", "demo-air");
            assertThat(asked.probes()).extracting(Program.Probe::port).containsExactly("/dev/ttyUSB0", "/dev/ttyUSB1");
        });
    }

    @Test
    void whatCannotBeDoneIsSaidBeforeAnythingIsOpened() throws IOException {
        Path there = Files.writeString(folder.resolve("there"), "mine");
        Path fresh = folder.resolve("fresh");
        assertUsage("is there already and is not overwritten", "--probe", "demo-air=x", "--out", there);
        assertUsage("there is no folder", "--probe", "demo-air=x", "--out", folder.resolve("no/file"));
        assertUsage("a probe's name in a capture is 1 to 40 letters", "--probe", "my gauge=x", "--out", fresh);
        assertUsage("say --profile g=FILE for the probe g", "--probe", "g=x", "--out", fresh);
        assertUsage("--profile names \"x\", but no --probe does", "--probe", "g=x", "--profile", "x=y", "--out", fresh);
        assertUsage("--seconds must be above 0", "--probe", "demo-air=x", "--out", fresh, "--seconds", "0");
        assertUsage("--out", "--probe", "demo-air=x");
        assertThat(program.asked).isEmpty();
    }

    private void assertUsage(String message, Object... arguments) {
        Object[] line = new Object[arguments.length + 1];
        line[0] = "capture";
        System.arraycopy(arguments, 0, line, 1, arguments.length);
        Ran ran = Ran.of(program, line);
        assertThat(ran.err()).contains(message);
        assertThat(ran.code()).as(message).isEqualTo(2);
    }

    @Test
    void helpStartsWithTwoExamples() {
        assertThat(Ran.of(program, "capture", "--help").out().lines().limit(3))
                .first()
                .isEqualTo("Examples:");
    }
}
