package settlemark.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.decode.DecodeSink;
import settlemark.decode.ProbeDecoder;
import settlemark.decode.Rejected;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.profile.Source;

/** What a simulated device says is read back by the decoder of the same profile. */
class ProfileVoiceTest {
    private final List<Double> values = new ArrayList<>();
    private final List<Rejected> rejections = new ArrayList<>();

    private final DecodeSink sink = new DecodeSink() {
        @Override
        public void sample(int channel, long timeNanos, double value, SampleStatus status) {
            values.add(value);
        }

        @Override
        public void rejected(Rejected rejected) {
            rejections.add(rejected);
        }
    };

    private static RigTruth truth() {
        return new RigTruth(
                0,
                7.1,
                3.5,
                140,
                70,
                90,
                0,
                90_000,
                72_000,
                18_000,
                0,
                1200,
                300,
                120,
                RigTruth.Stage.HIGH,
                true,
                false,
                false);
    }

    static List<String> unasked() {
        return ProfileLibrary.ids().stream()
                .filter(id -> ProfileLibrary.get(id).serial().isPresent())
                .filter(id -> ProfileLibrary.get(id).messages().get(0).source() instanceof Source.Unasked)
                .toList();
    }

    @ParameterizedTest
    @MethodSource("unasked")
    void whatADeviceSaysByItselfIsUnderstood(String id) {
        Profile profile = ProfileLibrary.get(id);
        ProfileVoice voice = new ProfileVoice(profile, 0, truth());
        ProbeDecoder decoder = new ProbeDecoder(profile);
        for (int second = 0; second < 5; second++) {
            byte[] said = voice.at(second * 1_000_000_000L, truth());
            assertThat(said).isNotEmpty();
            decoder.accept(new Chunk(second, said), sink);
        }
        assertThat(rejections.size()).isLessThanOrEqualTo(1);
        assertThat(values.size()).isGreaterThanOrEqualTo(4 * profile.channels().size());
        assertThat(values).allMatch(Double::isFinite);
    }

    @Test
    void aModbusDeviceAnswersWithItsReadings() {
        Profile profile = ProfileLibrary.get("modbus-registers");
        ProfileVoice voice = new ProfileVoice(profile, 0, truth());
        // Modbus Application Protocol 1.1b3, 6.3, the example's request, as unit 17.
        byte[] request = HexFormat.of().parseHex("1103006B00037687");
        byte[] answer = voice.asked(request, 0, request.length);
        new ProbeDecoder(profile).accept(new Chunk(0, answer), sink);
        assertThat(rejections).isEmpty();
        // 140 and 70 degF in degC, steps of 0.1.
        assertThat(values.get(0)).isCloseTo(60, within(0.051));
        assertThat(values.get(1)).isCloseTo(21.1, within(0.051));
        assertThat(voice.at(0, truth())).isEmpty();
    }

    @Test
    void anInstrumentAnswersInText() {
        Profile profile = ProfileLibrary.get("scpi-meter");
        ProfileVoice voice = new ProfileVoice(profile, 0, truth());
        byte[] request = "MEAS:PRES?\n".getBytes(StandardCharsets.US_ASCII);
        byte[] answer = voice.asked(request, 0, request.length);
        // 3.5 conventional inches of water of 249.08891 Pa.
        assertThat(Double.parseDouble(new String(answer, StandardCharsets.US_ASCII).strip()))
                .isCloseTo(871.811, within(0.001));
        assertThat(voice.askedFor()).containsExactly("reading", "error", "identity");
    }
}
