package settlemark.decode;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.profile.Example;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.profile.ProfileReader;

/** The profiles that come with the program. */
final class ShippedProfilesTest {
    private static final Path FOLDER = Path.of("device-profiles");
    /** Their devices are invented for the demo, and so are their examples. */
    private static final Set<String> WITHOUT_SOURCE = Set.of("demo-gauge", "demo-air");

    static List<String> ids() {
        return ProfileLibrary.ids();
    }

    @ParameterizedTest
    @MethodSource("ids")
    void everyExampleHoldsInBothDirections(String id) {
        ProfileProof proof = ProfileProof.of(ProfileLibrary.get(id));
        assertThat(proof.faults()).isEmpty();
        assertThat(proof.examplesRun()).isPositive();
    }

    @ParameterizedTest
    @MethodSource("ids")
    void thereAreGoodAndBadExamplesOfKnownSource(String id) {
        List<Example> examples = ProfileLibrary.get(id).examples();
        assertThat(examples).anyMatch(Example::isGood).anyMatch(example -> !example.isGood());
        if (!WITHOUT_SOURCE.contains(id)) {
            String text = ProfileLibrary.get(id).text();
            assertThat(text.split("\n    source: ", -1)).as("sources of " + id).hasSize(examples.size() + 1);
        }
    }

    @ParameterizedTest
    @MethodSource("ids")
    void everyChannelAndFactIsShownByAnExample(String id) {
        Profile profile = ProfileLibrary.get(id);
        assertThat(profile.channels())
                .allSatisfy(channel -> assertThat(profile.examples())
                        .as(channel.name())
                        .anyMatch(example -> example.gives().containsKey(channel.name())));
        assertThat(profile.facts())
                .allSatisfy(fact -> assertThat(profile.examples())
                        .as(fact.id())
                        .anyMatch(example -> example.facts().containsKey(fact.id())));
    }

    @ParameterizedTest
    @MethodSource("ids")
    void itIsReadWithoutAnyWarningAndHasTheNameOfItsFile(String id) throws IOException {
        byte[] text = Files.readAllBytes(FOLDER.resolve(id + ".yaml"));
        assertThat(ProfileReader.read(id + ".yaml", text).problems()).isEmpty();
        assertThat(ProfileLibrary.get(id).id()).isEqualTo(id);
        assertThat(new String(text, StandardCharsets.UTF_8)).startsWith("# yaml-language-server: ");
    }

    /** What is asked for only once would never be known if the first answer were taken for a cut line. */
    @Test
    void theFirstAnswerCounts() {
        Profile meter = ProfileLibrary.get("scpi-meter");
        List<String> facts = new ArrayList<>();
        DecodeSink sink = new DecodeSink() {
            @Override
            public void sample(int channel, long timeNanos, double value, SampleStatus status) {
                throw new AssertionError("no sample was asked for");
            }

            @Override
            public void rejected(Rejected rejected) {
                throw new AssertionError(rejected.reason());
            }

            @Override
            public void fact(int fact, long timeNanos, String words) {
                facts.add(meter.facts().get(fact).id() + " " + words);
            }
        };
        new ProbeDecoder(meter)
                .accept(new Chunk(1, 2, "TEST WORKS,PM-1,0042,1.2.3\n".getBytes(StandardCharsets.US_ASCII)), sink);
        assertThat(facts)
                .containsExactlyInAnyOrder(
                        "manufacturer TEST WORKS", "model PM-1", "serial-number 0042", "firmware 1.2.3");
    }

    @Test
    void theIndexNamesEveryProfileOfTheFolder() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            List<String> there = files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".yaml"))
                    .map(name -> name.substring(0, name.length() - ".yaml".length()))
                    .toList();
            assertThat(ids()).containsExactlyInAnyOrderElementsOf(there);
        }
    }
}
