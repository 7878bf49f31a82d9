package settlemark.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.DictionaryFile;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.decode.ProbeDecoder;
import settlemark.decode.ProfileProof;
import settlemark.document.Problem;
import settlemark.measure.Chunk;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.profile.ProfileReader;
import settlemark.profile.ProfileReading;

/** Whatever the document, it is a profile or a list of problems, and a profile can be used. */
final class ProfileFuzzTest {
    static Stream<Arguments> shippedProfiles() {
        return ProfileLibrary.ids().stream()
                .map(id -> Arguments.of(Named.of(id, ProfileLibrary.document(id).orElseThrow())));
    }

    @MethodSource("shippedProfiles")
    @DictionaryFile(resourcePath = "profile.dict")
    @FuzzTest(maxDuration = "10m")
    void anyDocumentIsAProfileOrAListOfProblems(byte[] document) {
        ProfileReading reading = ProfileReader.read("fuzz.yaml", document);
        boolean wrong = reading.problems().stream().anyMatch(Problem::isError);
        assertThat(reading.profile().isPresent()).isNotEqualTo(wrong);
        reading.profile().ifPresent(profile -> use(profile, document));
    }

    /** Runs the profile's own examples, and reads its document as if a probe had sent it. */
    private static void use(Profile profile, byte[] document) {
        assertThat(ProfileProof.of(profile).examplesRun()).isNotNegative();
        Heard heard = new Heard();
        new ProbeDecoder(profile).accept(new Chunk(1, document), heard);
        heard.check();
    }
}
