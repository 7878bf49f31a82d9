package settlemark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

final class CommandsTest {
    @Test
    void theHelpSaysWhatEachCommandDoes() {
        Ran ran = Ran.of(new FakeProgram(), "--help");
        assertThat(ran.code()).isZero();
        List<String> lines = ran.out().lines().toList();
        List<String> commands = lines.subList(lines.indexOf("Commands:") + 1, lines.size());
        assertThat(commands)
                .anyMatch(line -> line.matches("  capture +Writes the raw bytes of probes.*"))
                .anyMatch(line -> line.matches("  profile +Write, check and try.*"))
                .noneMatch(line -> line.contains("Examples"));
    }
}
