package settlemark.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class PortUsersTest {
    private static final Path NODE = Path.of("/dev/ttyUSB0");

    @TempDir
    private Path proc;

    @Test
    void namesEachOtherProgramThatHoldsTheDevice() throws IOException {
        process(100, "minicom", NODE);
        process(99, "cat", NODE);
        process(300, "other", Path.of("/dev/ttyUSB01"));
        process(42, "settlemark", NODE);
        Files.createDirectories(proc.resolve("400"));
        assertThat(new PortUsers(proc, 42).of(NODE)).isEqualTo("cat (process 99), minicom (process 100)");
    }

    @Test
    void leavesOutTheMakerOfAPseudoTerminal() throws IOException {
        process(100, "socat", NODE, Path.of("/dev/ptmx"));
        assertThat(new PortUsers(proc, 42).of(NODE)).isEmpty();
    }

    @Test
    void saysNothingWhereProcessesCannotBeSeen() {
        assertThat(new PortUsers(proc.resolve("none"), 42).of(NODE)).isEmpty();
    }

    private void process(int pid, String name, Path... open) throws IOException {
        Path descriptors = Files.createDirectories(proc.resolve(pid + "/fd"));
        Files.writeString(descriptors.resolveSibling("comm"), name + "\n");
        for (int i = 0; i < open.length; i++) {
            Files.createSymbolicLink(descriptors.resolve(Integer.toString(i)), open[i]);
        }
    }
}
