package settlemark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.profile.ProfileLibrary;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

final class ProfileCheckCommandTest {
    @TempDir
    Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();
    private Path gauge;
    private Path plain;

    @BeforeEach
    void writeShippedProfiles() throws IOException {
        gauge = write("gauge.yaml", text("demo-gauge"));
        plain = write("plain.yaml", text("plain-line"));
    }

    private static String text(String id) {
        return new String(ProfileLibrary.document(id).orElseThrow(), StandardCharsets.UTF_8);
    }

    private Path write(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private int run(Object... arguments) {
        String[] words = new String[arguments.length];
        for (int i = 0; i < words.length; i++) {
            words[i] = arguments[i].toString();
        }
        return ProfileCommand.line(new FakeProgram(), InputStream.nullInputStream())
                .setOut(new PrintWriter(out))
                .setErr(new PrintWriter(err))
                .execute(words);
    }

    @Test
    void goodProfilesAreOneLineEachAndExitCodeZero() {
        assertThat(run("check", gauge, plain)).isZero();
        assertThat(out.toString().lines())
                .containsExactly(
                        gauge + ": good profile demo-gauge (simulated), 10 examples ran",
                        plain + ": good profile plain-line, 5 examples ran");
        assertThat(err.toString()).isEmpty();
    }

    @Test
    void allProblemsOfAllFilesComeAtOnceAndExitCodeIsThree() throws IOException {
        Path first = write(
                "first.yaml",
                text("demo-gauge").replace("baud: 9600", "buad: 9600").replace("sign: -1", "sign: minus"));
        Path second = write("second.yaml", text("plain-line").replace("unit: Pa", "unit: [psi]"));
        assertThat(run("check", first, gauge, second)).isEqualTo(3);
        assertThat(err.toString().lines().map(line -> line.replace(folder + java.io.File.separator, "")))
                .containsExactly(
                        "first.yaml:12:11: serial needs \"baud\"",
                        "first.yaml:12:12: unknown key \"buad\"; did you mean \"baud\"?",
                        "first.yaml:51:11: sign must be one of 1, -1, got \"minus\"",
                        "second.yaml:29:11: unit is read as a list because of its square brackets; quote it: unit: \"[psi]\"");
        assertThat(out.toString().lines()).hasSize(1).allMatch(line -> line.contains("demo-gauge"));
    }

    @Test
    void anExampleThatDoesNotHoldIsAProblemAtItsPlace() throws IOException {
        Path wrong = write("wrong.yaml", text("plain-line").replace("pressure: 871.8", "pressure: 871.9"));
        assertThat(run("check", wrong)).isEqualTo(3);
        assertThat(err.toString())
                .isEqualToNormalizingNewlines(
                        wrong + ":32:5: a number with decimals: pressure must give 871.9, got 871.8\n");
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void aProfileWithoutExamplesIsGoodWithAWarning() throws IOException {
        String text = text("plain-line");
        Path bare = write("bare.yaml", text.substring(0, text.indexOf("examples:")));
        assertThat(run("check", bare)).isZero();
        assertThat(err.toString()).startsWith(bare + ":8:1: warning: no examples");
        assertThat(out.toString()).contains("0 examples ran");
    }

    @Test
    void jsonGivesAnObjectAFileWithItsProblems() throws IOException {
        Path bad = write("bad.yaml", text("demo-gauge").replace("baud: 9600", "buad: 9600"));
        Path bare = write("bare.yaml", text("plain-line").replaceAll("(?s)examples:.*", ""));
        assertThat(run("check", "--json", gauge, bad, bare)).isEqualTo(3);
        List<JsonNode> files =
                out.toString().lines().map(JsonMapper.shared()::readTree).toList();
        assertThat(files)
                .extracting(f -> f.get("file").stringValue())
                .containsExactly(gauge.toString(), bad.toString(), bare.toString());
        assertThat(files).extracting(f -> f.get("good").booleanValue()).containsExactly(true, false, true);
        assertThat(files.get(0).get("id").stringValue()).isEqualTo("demo-gauge");
        assertThat(files.get(0).get("examples").intValue()).isEqualTo(10);
        assertThat(files.get(0).get("problems")).isEmpty();
        assertThat(files.get(1).get("id")).isNull();
        assertThat(files.get(1).get("problems").get(1).toString())
                .isEqualTo("{\"line\":12,\"column\":12,\"severity\":\"error\","
                        + "\"message\":\"unknown key \\\"buad\\\"; did you mean \\\"baud\\\"?\"}");
        assertThat(files.get(2).get("problems").get(0).get("severity").stringValue())
                .isEqualTo("warning");
        assertThat(err.toString()).isEmpty();
    }

    @Test
    void aFileThatCannotBeReadIsExitCodeTwo() {
        assertThat(run("check", folder.resolve("nothing.yaml"), folder, plain)).isEqualTo(2);
        assertThat(err.toString().lines())
                .containsExactly(
                        folder.resolve("nothing.yaml") + ": no such file",
                        folder + ": is a folder; name the files in it");
        assertThat(out.toString()).contains("plain-line");
    }

    @Test
    void aFileOfAnyLengthIsRefusedWithoutReadingItAll() throws IOException {
        Path large = folder.resolve("large.yaml");
        Files.write(large, new byte[3 << 20]);
        assertThat(run("check", large)).isEqualTo(3);
        assertThat(err.toString()).contains("at most 1048576 are read");
    }

    @Test
    void withoutACommandOrAFileTheUsageIsShown() {
        assertThat(run()).isEqualTo(2);
        assertThat(err.toString()).contains("profile check FILE");
        assertThat(run("check")).isEqualTo(2);
    }

    @Test
    void helpStartsWithTwoExamples() {
        assertThat(run("check", "--help")).isZero();
        assertThat(out.toString().lines().limit(3))
                .containsExactly(
                        "Examples:",
                        "  settlemark profile check my-gauge.yaml",
                        "  settlemark profile check device-profiles/*.yaml");
    }
}
