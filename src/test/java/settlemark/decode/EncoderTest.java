package settlemark.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import settlemark.measure.Chunk;
import settlemark.measure.Sample;
import settlemark.measure.SampleStatus;
import settlemark.profile.Example;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;

final class EncoderTest {
    private static final SampleStatus OK = SampleStatus.OK;
    private static final Profile GAUGE = ProfileLibrary.get("demo-gauge");
    private static final Profile AIR = ProfileLibrary.get("demo-air");

    private static String line(double one, double two, double battery, SampleStatus... statuses) {
        byte[] line = new Encoder(GAUGE).encode(new double[] {one, two, battery}, statuses);
        return new String(line, StandardCharsets.US_ASCII);
    }

    private static Recorder decode(Profile profile, byte[] frame) {
        return Recorder.of(profile, new Chunk(1, frame));
    }

    /** The second port reads negative under pressure: its sign on the wire is the other way round. */
    @Test
    void theGaugeSpeaksAsItsExampleDoes() {
        assertThat(line(6.83, 3.49, 87, OK, OK, OK)).isEqualTo("P1 +6.83 P2 -3.49 B 87\r\n");
        assertThat(line(-0.004, -12.346, 100, OK, OK, OK)).isEqualTo("P1 +0.00 P2 +12.35 B 100\r\n");
        assertThat(line(0.125, 0.135, 7.5, OK, OK, OK)).isEqualTo("P1 +0.12 P2 -0.14 B 8\r\n");
        assertThat(line(Double.NaN, 0, 9, SampleStatus.OVER_RANGE, SampleStatus.OVER_RANGE, OK))
                .isEqualTo("P1 +OVER P2 -OVER B 9\r\n");
    }

    @Test
    void theReceiverCountsItsFrames() {
        Encoder encoder = new Encoder(AIR);
        double[] values = {54.32, 21.06, 95};
        SampleStatus[] ok = {OK, OK, OK};
        byte[] first = encoder.encode(values, ok);
        assertThat(HexFormat.of().formatHex(first)).isEqualTo("a55a08010138153a085f009e38");
        for (int i = 2; i < 258; i++) {
            assertThat(encoder.encode(values, ok)[4]).isEqualTo((byte) i);
        }
    }

    @Test
    void aValueBeyondTheWireIsOverOrUnderRange() {
        byte[] frame = new Encoder(AIR).encode(new double[] {400, -400, 300}, new SampleStatus[] {OK, OK, OK});
        Recorder recorder = decode(AIR, frame);
        assertThat(recorder.samples)
                .extracting(Sample::status)
                .containsExactly(SampleStatus.OVER_RANGE, SampleStatus.UNDER_RANGE, OK);
        // The battery has no code for over range, and 255 is taken: 254 is the nearest that it can say.
        assertThat(recorder.values(2)).containsExactly(254.0);
    }

    @Test
    void aMeasurementNeverBecomesASpecialValue() {
        // -327.68 is the code of an open circuit, -327.67 that of under range.
        byte[] frame = new Encoder(AIR).encode(new double[] {-327.68, -327.67, 0}, new SampleStatus[] {OK, OK, OK});
        assertThat(decode(AIR, frame).samples)
                .extracting(Sample::status)
                .containsExactly(SampleStatus.UNDER_RANGE, SampleStatus.UNDER_RANGE, OK);
    }

    @Test
    void theLargestUnsignedNumbersAreWritten() {
        Profile profile = Recorder.profile("""
                language: 1
                id: large
                name: Large
                framing: {length-field: {start: "AA", at: 1, type: uint8, adds: 0, maximum-bytes: 20}}
                fields:
                  - {name: x, at: 2, type: uint64}
                channels:
                  - {id: x, field: x, unit: Pa}
                """);
        Encoder encoder = new Encoder(profile);
        for (double value : new double[] {0, 0x1p53, 0x1p63, 0x1.8p63, 0x1.fffffffffffffp63}) {
            byte[] frame = encoder.encode(new double[] {value}, new SampleStatus[] {OK});
            assertThat(frame).hasSize(10);
            assertThat(decode(profile, frame).values(0)).containsExactly(value);
        }
        assertThat(decode(profile, encoder.encode(new double[] {1e30}, new SampleStatus[] {OK}))
                        .values(0))
                .containsExactly(0x1p64);
        assertThat(decode(profile, encoder.encode(new double[] {-5}, new SampleStatus[] {OK}))
                        .values(0))
                .containsExactly(0.0);
    }

    @Test
    void whatCannotBeSaidIsRefused() {
        Encoder encoder = new Encoder(GAUGE);
        assertThat(encoder.canSay(0, SampleStatus.FAULT)).isTrue();
        assertThat(encoder.canSay(2, SampleStatus.FAULT)).isFalse();
        assertThatThrownBy(() -> encoder.encode(new double[3], new SampleStatus[] {OK, OK, SampleStatus.FAULT}))
                .hasMessage("the profile has no code for FAULT in channel 2");
        assertThatThrownBy(() -> encoder.encode(new double[] {0, Double.NaN, 0}, new SampleStatus[] {OK, OK, OK}))
                .hasMessage("channel 1 must be a finite number, got NaN");
        assertThatThrownBy(() -> encoder.encode(new double[2], new SampleStatus[] {OK, OK}))
                .hasMessage("the profile has 3 channels, got 2 values and 2 statuses");
    }

    @Test
    void aPatternNeedsAnExampleToBeWritten() {
        Profile profile = Recorder.profile("""
                language: 1
                id: words
                name: Words
                framing: {line: {end: "\\n", maximum-bytes: 60}}
                fields:
                  - {name: p, pattern: "p=([0-9.]+)", type: text}
                channels:
                  - {id: p, field: p, unit: Pa}
                """);
        assertThatThrownBy(() -> new Encoder(profile))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("only where a good example shows the line around it");
    }

    @ParameterizedTest
    @CsvSource({"demo-gauge, 0.005", "demo-air, 0.005", "plain-line, 0"})
    void anyValueComesBackWithinHalfAStep(String id, double halfStep) {
        long seed = System.nanoTime();
        System.out.println("EncoderTest " + id + " seed " + seed);
        Random random = new Random(seed);
        Profile profile = ProfileLibrary.get(id);
        Encoder encoder = new Encoder(profile);
        ProbeDecoder decoder = new ProbeDecoder(profile);
        Recorder recorder = new Recorder();
        decoder.accept(new Chunk(0, "\n".getBytes(StandardCharsets.US_ASCII)), new Recorder());
        int channels = profile.sources().size();
        SampleStatus[] statuses = new SampleStatus[channels];
        java.util.Arrays.fill(statuses, OK);
        for (int i = 0; i < 10_000; i++) {
            double[] values = random.doubles(channels, -300, 300).toArray();
            values[channels - 1] = id.equals("plain-line") ? values[0] : random.nextInt(101);
            recorder.samples.clear();
            decoder.accept(new Chunk(i, encoder.encode(values, statuses)), recorder);
            assertThat(recorder.samples).as("seed %d", seed).hasSize(channels);
            for (Sample sample : recorder.samples) {
                assertThat(sample.value()).isCloseTo(values[sample.channel()], within(halfStep + 1e-9));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"demo-gauge", "demo-air", "plain-line"})
    void everyShippedExampleHoldsInBothDirections(String id) {
        Profile profile = ProfileLibrary.get(id);
        ProfileProof proof = ProfileProof.of(profile);
        assertThat(proof.faults()).isEmpty();
        assertThat(proof.examplesRun()).isEqualTo(profile.examples().size());
        assertThat(profile.examples()).filteredOn(Example::isGood).hasSizeGreaterThanOrEqualTo(3);
        assertThat(profile.examples()).filteredOn(example -> !example.isGood()).hasSizeGreaterThanOrEqualTo(2);
    }
}
