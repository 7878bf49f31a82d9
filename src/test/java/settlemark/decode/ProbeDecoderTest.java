package settlemark.decode;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import settlemark.measure.Chunk;
import settlemark.measure.Sample;
import settlemark.measure.SampleStatus;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;

final class ProbeDecoderTest {
    private static final Profile GAUGE = ProfileLibrary.get("demo-gauge");
    private static final Profile AIR = ProfileLibrary.get("demo-air");
    private static final Profile PLAIN = ProfileLibrary.get("plain-line");
    private static final String GOOD_LINE = "P1 +6.83 P2 -3.49 B 87\r\n";

    /** The first and the second example of the demo receiver's profile. */
    private static final byte[] FRAME_1 = hex("A55A08010138153A085F009E38");

    private static final byte[] FRAME_2 = hex("A55A080102DAFDFFFF5E005783");

    private static byte[] hex(String digits) {
        return HexFormat.of().parseHex(digits);
    }

    private static Chunk text(long timeNanos, String text) {
        return new Chunk(timeNanos, text.getBytes(StandardCharsets.ISO_8859_1));
    }

    private static Chunk bytes(long timeNanos, byte[]... parts) {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        for (byte[] part : parts) {
            all.writeBytes(part);
        }
        return new Chunk(timeNanos, all.toByteArray());
    }

    @Test
    void aLineGivesEveryChannelWithItsSign() {
        Recorder recorder = Recorder.of(GAUGE, text(7, GOOD_LINE));
        assertThat(recorder.events)
                .containsExactly(
                        new Sample(0, 7, 6.83, SampleStatus.OK),
                        new Sample(1, 7, 3.49, SampleStatus.OK),
                        new Sample(2, 7, 87, SampleStatus.OK));
    }

    @Test
    void aFrameGivesEveryChannel() {
        Recorder recorder = Recorder.of(AIR, bytes(7, FRAME_1));
        assertThat(recorder.events)
                .containsExactly(
                        new Sample(0, 7, 54.32, SampleStatus.OK),
                        new Sample(1, 7, 21.06, SampleStatus.OK),
                        new Sample(2, 7, 95, SampleStatus.OK));
    }

    @Test
    void aSpecialValueIsAStatusWithoutAValue() {
        Recorder recorder = Recorder.of(GAUGE, text(1, "P1 +OVER P2 FAIL B 87\r\n"));
        assertThat(recorder.samples)
                .extracting(Sample::status)
                .containsExactly(SampleStatus.OVER_RANGE, SampleStatus.FAULT, SampleStatus.OK);
        assertThat(recorder.values(0)).containsExactly(Double.NaN);
    }

    @Test
    void zeroIsNeverNegative() {
        Recorder recorder = Recorder.of(GAUGE, text(1, "P1 -0.00 P2 +0.00 B 87\r\n"));
        assertThat(recorder.values(0)).containsExactly(0.0);
        assertThat(recorder.values(1)).containsExactly(0.0);
    }

    @Test
    void aFrameHasTheTimeOfItsLastByte() {
        byte[] head = java.util.Arrays.copyOf(FRAME_1, 12);
        Recorder recorder = Recorder.of(AIR, bytes(100, head), bytes(200, new byte[] {FRAME_1[12]}, FRAME_2));
        assertThat(recorder.samples).extracting(Sample::timeNanos).containsOnly(200L);
        Recorder lines =
                Recorder.of(GAUGE, text(1, GOOD_LINE + "P1 +1.00 P2"), text(2, " +0.00 B 87\r"), text(3, "\n"));
        assertThat(lines.samples).extracting(Sample::timeNanos).containsExactly(1L, 1L, 1L, 3L, 3L, 3L);
    }

    @Test
    void garbageBetweenLinesIsOneRejectionAndTheNextLineArrives() {
        Recorder recorder = Recorder.of(GAUGE, text(1, GOOD_LINE), text(2, "\u0000\u00ff?x\r\n"), text(3, GOOD_LINE));
        assertThat(recorder.values(0)).containsExactly(6.83, 6.83);
        assertThat(recorder.rejections)
                .containsExactly(new Rejected(2, 24, "the line has 1 columns where 6 are expected: \"\\x00\\xFF?x\""));
    }

    @Test
    void blankLinesAreNothing() {
        Recorder recorder = Recorder.of(GAUGE, text(1, "\r\n \r\n" + GOOD_LINE + "\r\n\r\n"));
        assertThat(recorder.values(0)).containsExactly(6.83);
        assertThat(recorder.rejections).isEmpty();
    }

    @Test
    void aLineWithoutEndIsRejectedOnceAndTheNextLineArrives() {
        Recorder recorder =
                Recorder.of(GAUGE, text(1, "x".repeat(5000)), text(2, "y".repeat(5000) + "\r\n" + GOOD_LINE));
        assertThat(recorder.rejections).containsExactly(new Rejected(1, 0, "the line is longer than 64 bytes"));
        assertThat(recorder.values(0)).containsExactly(6.83);
    }

    @Test
    void theLongestLineIsTakenAndOneByteMoreIsNot() {
        String longest = "P1 +6.83 P2 -3.49 B 87" + " ".repeat(40) + "\r\n";
        assertThat(longest).hasSize(64);
        assertThat(Recorder.of(GAUGE, text(1, longest)).values(0)).containsExactly(6.83);
        assertThat(Recorder.of(GAUGE, text(1, " " + longest)).reasons())
                .containsExactly("the line is longer than 64 bytes");
    }

    @Test
    void theFirstLineMayHaveLostItsBeginning() {
        Recorder recorder = Recorder.of(PLAIN, text(1, "1.8\n871.8\n"));
        assertThat(recorder.reasons()).containsExactly("the first line may have lost its beginning");
        assertThat(recorder.values(0)).containsExactly(871.8);
    }

    @Test
    void afterAGapTheFrameUnderWayIsForgotten() {
        Recorder recorder = new Recorder();
        ProbeDecoder decoder = new ProbeDecoder(PLAIN);
        decoder.accept(text(1, "\n871"), recorder);
        decoder.reset();
        decoder.accept(text(2, ".8\n5\n"), recorder);
        assertThat(recorder.values(0)).containsExactly(5.0);
        assertThat(recorder.rejections)
                .containsExactly(new Rejected(2, 4, "the first line may have lost its beginning"));

        ProbeDecoder air = new ProbeDecoder(AIR);
        air.accept(bytes(1, hex("A55A0801")), recorder);
        air.reset();
        air.accept(bytes(2, FRAME_1), recorder);
        assertThat(air.acceptedFrames()).isEqualTo(1);
        assertThat(air.rejectedFrames()).isZero();
    }

    @Test
    void aCorruptedFrameIsRejectedWhereItStartsAndTheNextOneArrives() {
        byte[] corrupted = FRAME_1.clone();
        corrupted[11] ^= 0x40;
        Recorder recorder = Recorder.of(AIR, bytes(1, FRAME_1), bytes(2, corrupted), bytes(3, FRAME_2));
        assertThat(recorder.values(0)).containsExactly(54.32, -5.5);
        assertThat(recorder.rejections)
                .containsExactly(new Rejected(2, 13, "checksum DE 38 where the bytes give 9E 38"));
    }

    @Test
    void everyCorruptedFrameOfARowIsCounted() {
        byte[] corrupted = FRAME_1.clone();
        corrupted[5] ^= 1;
        Recorder recorder = Recorder.of(AIR, bytes(1, corrupted, corrupted, corrupted, FRAME_2));
        assertThat(recorder.rejections).extracting(Rejected::offset).containsExactly(0L, 13L, 26L);
        assertThat(recorder.values(0)).containsExactly(-5.5);
    }

    @Test
    void strayBytesBeforeAFrameAreOneRejection() {
        Recorder recorder = Recorder.of(AIR, bytes(1, FRAME_1, hex("0001A5A5FF"), FRAME_2));
        assertThat(recorder.values(0)).containsExactly(54.32, -5.5);
        assertThat(recorder.rejections)
                .containsExactly(new Rejected(1, 13, "stray bytes from 00 where a frame starts with A5 5A"));
    }

    @Test
    void framesBehindACorruptedLengthAreNotLost() {
        byte[] corrupted = FRAME_1.clone();
        corrupted[2] = 27; // 32 bytes in all: reaches over the two frames that follow
        Recorder recorder = Recorder.of(AIR, bytes(1, corrupted), bytes(2, FRAME_1), bytes(3, FRAME_2));
        assertThat(recorder.values(0)).containsExactly(54.32, -5.5);
        assertThat(recorder.samples).extracting(Sample::timeNanos).containsExactly(2L, 2L, 2L, 3L, 3L, 3L);
        assertThat(recorder.rejections).hasSize(1);
    }

    @Test
    void aFrameCutShortTakesNothingFromTheNextOne() {
        byte[] cut = java.util.Arrays.copyOf(FRAME_1, 9);
        Recorder recorder = Recorder.of(AIR, bytes(1, cut, FRAME_2, FRAME_1));
        assertThat(recorder.values(0)).containsExactly(-5.5, 54.32);
        assertThat(recorder.rejections).hasSize(1);
    }

    @Test
    void startMarkersWithinTheDataDoNotMislead() {
        Encoder encoder = new Encoder(AIR);
        // 232.05 degC is 23205 = 0x5AA5, on the wire A5 5A: the start marker.
        double[] values = {232.05, 232.05, 90};
        SampleStatus[] ok = {SampleStatus.OK, SampleStatus.OK, SampleStatus.OK};
        byte[] frame = encoder.encode(values, ok);
        assertThat(HexFormat.of().formatHex(frame)).contains("a55aa55a");
        byte[] corrupted = frame.clone();
        corrupted[12] ^= 1;
        Recorder recorder = Recorder.of(AIR, bytes(1, corrupted, frame, frame));
        assertThat(recorder.values(1)).containsExactly(232.05, 232.05);
    }

    @Test
    void countersTellWhatHappened() {
        Recorder recorder = new Recorder();
        ProbeDecoder decoder = new ProbeDecoder(AIR);
        Encoder encoder = new Encoder(AIR);
        double[] values = {20, 21, 90};
        SampleStatus[] ok = {SampleStatus.OK, SampleStatus.OK, SampleStatus.OK};
        for (int i = 0; i < 600; i++) {
            byte[] frame = encoder.encode(values, ok);
            if (i % 100 != 50) {
                decoder.accept(new Chunk(i, frame), recorder);
            }
        }
        decoder.accept(bytes(600, hex("00")), recorder);
        assertThat(decoder.acceptedFrames()).isEqualTo(594);
        assertThat(decoder.missedFrames()).isEqualTo(6);
        assertThat(decoder.rejectedFrames()).isEqualTo(1);
        assertThat(decoder.samples()).isEqualTo(3 * 594).isEqualTo(recorder.samples.size());
    }

    @Test
    void aFixedFrameIsFoundByItsChecksumAlone() {
        Profile profile = Recorder.profile("""
                language: 1
                id: bare
                name: Bare
                framing: {fixed: {length-bytes: 5}}
                checksum: {crc: {width: 16, poly: 0x8005, init: 0xFFFF, refin: true, refout: true, xorout: 0}}
                fields:
                  - {name: x, at: 1, type: uint16, byte-order: big}
                channels:
                  - {id: x, field: x, unit: Pa}
                """);
        Encoder encoder = new Encoder(profile);
        byte[] one = encoder.encode(new double[] {1000}, new SampleStatus[] {SampleStatus.OK});
        byte[] two = encoder.encode(new double[] {2000}, new SampleStatus[] {SampleStatus.OK});
        Recorder recorder = Recorder.of(profile, bytes(1, hex("123456"), one, two, hex("99"), one));
        assertThat(recorder.values(0)).containsExactly(1000.0, 2000.0, 1000.0);
    }

    @Test
    void numbersAreFoundByAPattern() {
        Profile profile = Recorder.profile("""
                language: 1
                id: words
                name: Words
                framing: {line: {end: "\\r", maximum-bytes: 60}}
                fields:
                  - {name: p, pattern: "p=\\\\s*([-+0-9.]+|---)", type: text, special: {open-circuit: "---"}}
                  - {name: t, pattern: "t=([^;]*)", type: text, scale: 0.5, offset: 1, special: {over-range: 9.9e37}}
                channels:
                  - {id: t, field: t, unit: Cel}
                  - {id: p, field: p, unit: "[psi]"}
                examples:
                  - {text: "\u00e4 p= 1.5 t=7; end\\r", gives: {p: 1.5, t: 4.5}}
                """);
        Recorder recorder = Recorder.of(profile, text(1, "\r\u00ffp=---;t= 8;\rp=2 t=+9.90000E+37\rp=1\rp=4 t=;\r"));
        assertThat(recorder.values(0)).containsExactly(5.0, Double.NaN);
        assertThat(recorder.samples)
                .extracting(Sample::status)
                .containsExactly(SampleStatus.OK, SampleStatus.OPEN_CIRCUIT, SampleStatus.OVER_RANGE, SampleStatus.OK);
        assertThat(recorder.reasons())
                .containsExactly("t was not found by its pattern in \"p=1\"", "t must be a number, got \"\"");
        assertThat(ProfileProof.of(profile).faults()).isEmpty();
    }

    @Test
    void aLineMayCarryAChecksumInHexadecimal() {
        Profile profile = Recorder.profile("""
                language: 1
                id: star
                name: Star
                framing: {line: {end: "\\r\\n", maximum-bytes: 40}}
                columns: {separator: ",", count: 2}
                checksum: {xor: {width: 8}, covers-from: 1, written: hex, lead-in: "*"}
                fields:
                  - {name: tag, column: 0, literal: $P}
                  - {name: p, column: 1, type: text, decimals: 1}
                channels:
                  - {id: p, field: p, unit: Pa}
                """);
        // 'P' ^ ',' ^ '1' ^ '.' ^ '5' = 50 ^ 2C ^ 31 ^ 2E ^ 35 = 56
        Recorder recorder = Recorder.of(profile, text(1, "$P,1.5*56\r\n$P,1.5*57\r\n$P,1.5*5g\r\n$P,1.5 56\r\n*\r\n"));
        assertThat(recorder.values(0)).containsExactly(1.5);
        assertThat(recorder.reasons())
                .containsExactly(
                        "checksum \"57\" where the bytes give \"56\"",
                        "checksum must be 2 hexadecimal digits, got \"5g\"",
                        "checksum missing: no \"*\" before it",
                        "checksum missing: the frame has only 1 bytes");
        byte[] written = new Encoder(profile).encode(new double[] {1.5}, new SampleStatus[] {SampleStatus.OK});
        assertThat(new String(written, StandardCharsets.US_ASCII)).isEqualTo("$P,1.5*56\r\n");
    }

    @Test
    void aNumberThatIsNoneInAFloatIsAFaultUnlessItHasAMeaning() {
        Profile profile = Recorder.profile("""
                language: 1
                id: floats
                name: Floats
                framing: {fixed: {start: "AA", length-bytes: 13}}
                fields:
                  - {name: x, at: 1, type: float32, special: {open-circuit: nan, over-range: 9999}}
                  - {name: y, at: 5, type: float64, byte-order: big}
                channels:
                  - {id: x, field: x, unit: Pa}
                  - {id: y, field: y, unit: Pa}
                """);
        Recorder recorder = Recorder.of(
                profile,
                bytes(
                        1,
                        hex("AA"),
                        hex("0000C07F"),
                        hex("7FF0000000000000"),
                        hex("AA"),
                        hex("003C1C46"),
                        hex("3FF8000000000000"),
                        hex("AA"),
                        hex("000080FF"),
                        hex("7FF8000000000001")));
        assertThat(recorder.samples)
                .extracting(Sample::status)
                .containsExactly(
                        SampleStatus.OPEN_CIRCUIT, SampleStatus.FAULT,
                        SampleStatus.OVER_RANGE, SampleStatus.OK,
                        SampleStatus.FAULT, SampleStatus.FAULT);
        assertThat(recorder.values(1)).isEqualTo(List.of(Double.NaN, 1.5, Double.NaN));
    }
}
