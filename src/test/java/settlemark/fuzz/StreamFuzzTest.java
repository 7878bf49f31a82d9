package settlemark.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.decode.ProbeDecoder;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;

/** Whatever a probe sends, and however it arrives, every shipped profile decodes it to the same samples. */
final class StreamFuzzTest {
    private static final List<Profile> SHIPPED =
            ProfileLibrary.ids().stream().map(ProfileLibrary::get).toList();

    static Stream<Arguments> framesOfEveryProfile() {
        return SHIPPED.stream()
                .flatMap(profile -> Stream.of(
                        Arguments.of(Named.of(
                                profile.id() + " encoded",
                                Frames.encoded(profile, 1).toInput())),
                        Arguments.of(Named.of(
                                profile.id() + " examples",
                                Frames.examples(profile).toInput()))));
    }

    @MethodSource("framesOfEveryProfile")
    @FuzzTest(maxDuration = "10m")
    void anyStreamGivesTheSameHoweverItIsCut(byte[] input) {
        FuzzedStream stream = FuzzedStream.of(input);
        Profile profile = profile(stream.name());
        List<ProbeDecoder> decoders = new ArrayList<>();
        Heard heard = AnyCut.check(stream, Inputs.of(profile), () -> {
            ProbeDecoder decoder = new ProbeDecoder(profile);
            decoders.add(decoder);
            return decoder::accept;
        });
        for (ProbeDecoder decoder : decoders) {
            assertThat(decoder.samples()).isEqualTo(heard.samples());
            assertThat(decoder.rejectedFrames()).isEqualTo(heard.rejections());
        }
    }

    /** The profile with an id, any where there is none. */
    private static Profile profile(String id) {
        return SHIPPED.stream()
                .filter(profile -> profile.id().equals(id))
                .findFirst()
                .orElseGet(() -> SHIPPED.get(Math.floorMod(id.hashCode(), SHIPPED.size())));
    }
}
