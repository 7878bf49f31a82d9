package settlemark.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.decode.ProbeDecoder;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;

/** Whatever a probe sends, and however it arrives, every shipped profile decodes it to the same samples. */
final class StreamFuzzTest {
    private static final List<String> IDS = ProfileLibrary.ids();
    private static final Map<String, Profile> SHIPPED =
            IDS.stream().collect(Collectors.toMap(Function.identity(), ProfileLibrary::get));

    static Stream<Arguments> framesOfEveryProfile() {
        return IDS.stream()
                .map(id -> Arguments.of(Named.of(id, new FuzzedStream(id, 1, Frames.of(SHIPPED.get(id))).toInput())));
    }

    @MethodSource("framesOfEveryProfile")
    @FuzzTest(maxDuration = "10m")
    void anyStreamGivesTheSameHoweverItIsCut(byte[] input) {
        FuzzedStream stream = FuzzedStream.of(input);
        Profile profile = SHIPPED.getOrDefault(
                stream.name(), SHIPPED.get(IDS.get(Math.floorMod(stream.name().hashCode(), IDS.size()))));
        List<ProbeDecoder> decoders = new ArrayList<>();
        Heard heard = AnyCut.check(stream, () -> {
            ProbeDecoder decoder = new ProbeDecoder(profile);
            decoders.add(decoder);
            return decoder::accept;
        });
        for (ProbeDecoder decoder : decoders) {
            assertThat(decoder.samples()).isEqualTo(heard.samples());
            assertThat(decoder.rejectedFrames()).isEqualTo(heard.rejections());
        }
    }
}
