package settlemark.decode;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import settlemark.document.Problem;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.profile.ProfileReader;
import settlemark.profile.ProfileReading;

/** Whatever comes in, nothing is thrown, and good frames behind it arrive. */
final class HostileInputTest {
    private static final List<String> WORDS = List.of(
            "0",
            "-1",
            "1e308",
            "0x7FFFFFFFFFFFFFFF",
            "99999999999999999999",
            "\"\"",
            "\"A5\"",
            "[]",
            "{}",
            "[psi]",
            "~",
            "true",
            "text",
            "int8",
            "uint64",
            "float32",
            "at: 1",
            "column: 3",
            "pattern: \"(.*)\"",
            "literal: \"00\"",
            "\"\\0\"",
            "\"\\n\"",
            "*x",
            "&x",
            "!!int 3",
            "counts: true",
            "written: hex",
            "65535",
            "over-range",
            ",",
            ":");

    @ParameterizedTest
    @ValueSource(strings = {"demo-gauge", "demo-air", "plain-line"})
    void aMutilatedProfileIsAListOfProblemsOrStillAProfile(String id) {
        long seed = Long.getLong("hostile.seed", System.nanoTime());
        System.out.println("HostileInputTest " + id + " seed " + seed);
        Random random = new Random(seed);
        String text = new String(ProfileLibrary.document(id).orElseThrow(), StandardCharsets.UTF_8);
        int profiles = 0;
        for (int i = 0; i < 1500; i++) {
            byte[] mutilated = mutilate(text, random).getBytes(StandardCharsets.UTF_8);
            if (i % 10 == 0) {
                mutilated[random.nextInt(mutilated.length)] = (byte) random.nextInt(256);
            }
            ProfileReading reading = ProfileReader.read("m.yaml", mutilated);
            assertThat(reading.profile().isPresent()
                            || reading.problems().stream().anyMatch(Problem::isError))
                    .isTrue();
            if (reading.profile().isPresent()) {
                profiles++;
                assertThat(ProfileProof.of(reading.orThrow()).examplesRun()).isNotNegative();
                feed(reading.orThrow(), random);
            }
        }
        assertThat(profiles).isPositive();
    }

    private static String mutilate(String text, Random random) {
        StringBuilder out = new StringBuilder(text);
        for (int n = 1 + random.nextInt(2); n > 0; n--) {
            int from = random.nextInt(out.length());
            switch (random.nextInt(4)) {
                case 0 -> out.delete(from, Math.min(out.length(), from + 1 + random.nextInt(20)));
                case 1 -> out.insert(from, WORDS.get(random.nextInt(WORDS.size())));
                case 2 -> replaceValue(out, from, random);
                default -> deleteLine(out, from);
            }
            if (out.isEmpty()) {
                out.append('x');
            }
        }
        return out.toString();
    }

    private static void replaceValue(StringBuilder out, int near, Random random) {
        int colon = out.indexOf(": ", near);
        if (colon >= 0) {
            int end = colon + 2;
            while (end < out.length() && ",}\n".indexOf(out.charAt(end)) < 0) {
                end++;
            }
            out.replace(colon + 2, end, WORDS.get(random.nextInt(WORDS.size())));
        }
    }

    private static void deleteLine(StringBuilder out, int near) {
        int to = out.indexOf("\n", near);
        int end = to < 0 ? out.length() : to + 1;
        out.delete(Math.min(end, out.lastIndexOf("\n", Math.max(0, near - 1)) + 1), end);
    }

    private static void feed(Profile profile, Random random) {
        byte[] noise = new byte[500];
        random.nextBytes(noise);
        Recorder recorder = Recorder.of(profile, new Chunk(1, noise));
        assertThat(recorder.samples.stream()
                        .filter(sample -> sample.status() == SampleStatus.OK)
                        .allMatch(sample -> !Double.isNaN(sample.value())))
                .isTrue();
    }

    @ParameterizedTest
    @ValueSource(strings = {"demo-gauge", "demo-air", "plain-line"})
    void goodFramesArriveAfterAnyNoise(String id) {
        long seed = Long.getLong("hostile.seed", System.nanoTime());
        System.out.println("HostileInputTest " + id + " seed " + seed);
        Random random = new Random(seed);
        Profile profile = ProfileLibrary.get(id);
        int channels = profile.sources().size();
        double[] values = new double[channels];
        Arrays.fill(values, 12);
        SampleStatus[] ok = new SampleStatus[channels];
        Arrays.fill(ok, SampleStatus.OK);
        Encoder encoder = new Encoder(profile);
        for (int i = 0; i < 500; i++) {
            byte[] noise = new byte[random.nextInt(400)];
            random.nextBytes(noise);
            ByteArrayOutputStream stream = new ByteArrayOutputStream();
            stream.writeBytes(noise);
            for (int n = 0; n < 10; n++) {
                stream.writeBytes(encoder.encode(values, ok));
            }
            Recorder recorder = Recorder.of(profile, new Chunk(1, stream.toByteArray()));
            // The first frame can lie in a line of noise; one that lies in a length that noise pretends to have is
            // found again, and the last ones can wait for such a length to be filled.
            assertThat(recorder.values(0).stream().filter(value -> value == 12).count())
                    .as("seed %d", seed)
                    .isGreaterThanOrEqualTo(7);
        }
    }

    @Test
    void aStreamOfStartMarkersNeitherHangsNorGrows() {
        byte[] markers = new byte[1 << 20];
        for (int i = 0; i < markers.length; i++) {
            markers[i] = (byte) (i % 2 == 0 ? 0xA5 : 0x5A);
        }
        ProbeDecoder decoder = new ProbeDecoder(ProfileLibrary.get("demo-air"));
        Recorder recorder = new Recorder();
        decoder.accept(new Chunk(1, markers), recorder);
        assertThat(recorder.samples).isEmpty();
        assertThat(decoder.rejectedFrames())
                .isEqualTo(recorder.rejections.size())
                .isPositive();
        assertThat(decoder.undecidedBytes()).isLessThanOrEqualTo(32);
    }
}
