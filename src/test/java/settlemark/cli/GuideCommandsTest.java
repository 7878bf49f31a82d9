package settlemark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands answer as the guide to device profiles shows. */
final class GuideCommandsTest {
    @TempDir
    Path folder = Path.of("");

    private String guide = "";
    private Path profile = Path.of("");

    @BeforeEach
    void writeTheExampleOfTheGuide() throws IOException {
        guide = Files.readString(Path.of("src/site/guide/device-profile.md"), StandardCharsets.UTF_8);
        String yaml = Pattern.compile("```yaml\n(.*?)```", Pattern.DOTALL)
                .matcher(guide.substring(guide.indexOf("\n## Step by step"), guide.indexOf("\n## Two more layouts")))
                .results()
                .map(match -> match.group(1))
                .collect(Collectors.joining("\n"));
        profile = Files.writeString(folder.resolve("draught-gauge.yaml"), yaml);
    }

    /** As the guide shows a command's output: indented by four. */
    private static String indented(String output) {
        return output.lines().map(line -> "    " + line + "\n").collect(Collectors.joining());
    }

    @Test
    void theCheckAnswersSo() {
        Ran ran = Ran.of(new FakeProgram(), "profile", "check", profile);
        assertThat(ran.code()).isZero();
        assertThat(guide).contains(indented(ran.out().replace(folder + "/", "")));
    }

    @Test
    void aFrameIsShownSo() {
        Ran ran = Ran.of(new FakeProgram(), "profile", "decode", profile, "--hex", "3C 01 FF 83 08 66 57 84");
        assertThat(ran.code()).isZero();
        assertThat(ran.out()).startsWith("frame at byte 0");
        assertThat(guide).contains(indented(ran.out()));
    }
}
