package settlemark.decode;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.profile.ProfileReader;
import settlemark.profile.ProfileReading;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What the guide to device profiles says is so. */
final class GuideTest {
    private static final String GUIDE = read("src/site/guide/device-profile.md");
    private static final String EXAMPLE = all("```yaml\n(.*?)```", section("Step by step")).stream()
            .map(match -> match.group(1))
            .collect(Collectors.joining("\n"));

    private static String read(String file) {
        try {
            return Files.readString(Path.of(file), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String section(String title) {
        String after = GUIDE.substring(GUIDE.indexOf("\n## " + title + "\n"));
        int next = after.indexOf("\n## ", 1);
        return next < 0 ? after : after.substring(0, next);
    }

    private static List<MatchResult> all(String pattern, String text) {
        return Pattern.compile(pattern, Pattern.DOTALL).matcher(text).results().toList();
    }

    private static ProfileReading reading(String yaml) {
        return ProfileReader.read("draught-gauge.yaml", yaml.getBytes(StandardCharsets.UTF_8));
    }

    /** As the check prints them, without the file's name and the place. */
    private static List<String> messages(String yaml) {
        ProfileReading reading = reading(yaml);
        if (reading.profile().isEmpty()) {
            return reading.problems().stream().map(problem -> problem.message()).toList();
        }
        return ProfileProof.of(reading.profile().get()).faults().stream()
                .map(ProfileProof.Fault::message)
                .toList();
    }

    @Test
    void theExampleProvesItself() {
        ProfileReading reading = reading(EXAMPLE);
        assertThat(reading.problems()).isEmpty();
        ProfileProof proof = ProfileProof.of(reading.profile().orElseThrow());
        assertThat(proof.faults()).isEmpty();
        assertThat(proof.examplesRun()).isEqualTo(3);
    }

    static List<String> otherLayouts() {
        return all("```yaml\n(.*?)```", section("Two more layouts")).stream()
                .map(match -> match.group(1))
                .toList();
    }

    @ParameterizedTest
    @MethodSource("otherLayouts")
    void theOtherLayoutsProveThemselves(String yaml) {
        ProfileReading reading = reading(yaml);
        assertThat(reading.problems()).isEmpty();
        ProfileProof proof = ProfileProof.of(reading.profile().orElseThrow());
        assertThat(proof.faults()).isEmpty();
        assertThat(proof.examplesRun()).isGreaterThanOrEqualTo(3);
    }

    /** A row of the table of mistakes. */
    record Mistake(String right, String wrong, String message) {}

    static List<Mistake> mistakes() {
        return all("\\| `([^`]+)` \\| `([^`]+)` \\| `([^`]+)` \\|", section("The usual mistakes")).stream()
                .map(row -> new Mistake(row.group(1), row.group(2), row.group(3)))
                .toList();
    }

    @ParameterizedTest
    @MethodSource("mistakes")
    void aMistakeGivesTheMessageThatTheGuideShows(Mistake mistake) {
        assertThat(EXAMPLE).contains(mistake.right());
        String written = EXAMPLE.replaceFirst(
                Pattern.quote(mistake.right()), java.util.regex.Matcher.quoteReplacement(mistake.wrong()));
        assertThat(messages(written)).contains(mistake.message());
    }

    @Test
    void everyKeyOfTheLanguageStandsInTheReference() {
        Set<String> keys = new TreeSet<>();
        collectKeys(JsonMapper.shared().readTree(read("device-profiles/profile.schema.json")), keys);
        assertThat(keys).hasSizeGreaterThan(100);
        List<String> said = all("`([a-z0-9-]+)`", section("All keys")).stream()
                .map(match -> match.group(1))
                .toList();
        assertThat(said).containsAll(keys);
    }

    private static void collectKeys(JsonNode schema, Set<String> keys) {
        JsonNode properties = schema.path("properties");
        if (properties.isObject()) {
            keys.addAll(new ArrayList<>(properties.propertyNames()));
        }
        schema.forEach(child -> collectKeys(child, keys));
    }
}
