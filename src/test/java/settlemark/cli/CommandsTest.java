package settlemark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class CommandsTest {
    @Test
    void theHelpSaysWhatEachCommandDoes() {
        assertThat(listed("--help"))
                .anyMatch(line -> line.matches("  capture +Writes the raw bytes of probes.*"))
                .anyMatch(line -> line.matches("  profile +Write, check and try.*"));
    }

    @Test
    void eachCommandGoesByTheNameThatTheLineAsksFor() {
        List<String> all = names("--help");
        assertThat(all).contains("demo", "record", "verify", "store").doesNotHaveDuplicates();
        for (String name : all) {
            Ran alone = Ran.of(new FakeProgram(), name, "--help");
            Ran among = Ran.of(new FakeProgram(), "--verbose=true", name, "--help");
            assertThat(alone.code()).as(name).isZero();
            assertThat(alone.out()).as(name).contains("settlemark " + name).isEqualTo(among.out());
        }
    }

    @Test
    void aWordThatIsNoCommandIsAnsweredWithThoseThatAre() {
        Ran ran = Ran.of(new FakeProgram(), "-v", "recrod");
        assertThat(ran.code()).isEqualTo(Program.USAGE);
        assertThat(ran.err()).contains("recrod").contains("record");
    }

    private static List<String> names(String... arguments) {
        return listed(arguments).stream()
                .filter(line -> line.matches("  [a-z]+ .*"))
                .map(line -> line.substring(2, line.indexOf(' ', 2)))
                .toList();
    }

    @ParameterizedTest
    @ValueSource(strings = {"job", "instruments", "session", "store", "key", "profile"})
    void aGroupsHelpSaysWhatEachOfItsCommandsDoes(String group) {
        assertThat(listed(group, "--help")).hasSizeGreaterThan(2);
    }

    private static List<String> listed(String... arguments) {
        Ran ran = Ran.of(new FakeProgram(), (Object[]) arguments);
        assertThat(ran.code()).isZero();
        List<String> lines = ran.out().lines().toList();
        List<String> commands = lines.subList(lines.indexOf("Commands:") + 1, lines.size());
        assertThat(commands).noneMatch(line -> line.contains("Example"));
        return commands;
    }
}
