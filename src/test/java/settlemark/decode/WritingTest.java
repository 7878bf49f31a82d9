package settlemark.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.re2j.Pattern;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.profile.ByteText;
import settlemark.profile.Checksum;
import settlemark.profile.Curve;
import settlemark.profile.Example;
import settlemark.profile.Field;
import settlemark.profile.Framing;
import settlemark.profile.Profile;
import settlemark.profile.Secrets;
import settlemark.profile.Source;
import settlemark.profile.Tagged;
import settlemark.profile.Wire;

/** Frames that are hard to write, and those that cannot be. */
final class WritingTest {
    private static final SampleStatus OK = SampleStatus.OK;

    private static Tagged tags(Map<Long, Integer> lengths) {
        return new Tagged(0, Made.U8, Optional.of(Made.U8), lengths);
    }

    @Test
    void charactersOfTaggedValuesKeepTheirPlace() {
        Profile profile = Made.message(new Framing.Packet(60))
                .tagged(tags(Map.of(3L, 6)))
                .field("open", new Field.ByTag(1, 0, 1), new Field.Characters(0))
                .field("fixed", new Field.ByTag(2, 0, 1), new Field.Characters(4))
                .field("known", new Field.ByTag(3, 0, 0), new Field.Characters(3))
                .fact("open", "open")
                .fact("fixed", "fixed")
                .fact("known", "known")
                .profile();
        Encoder encoder = new Encoder(profile);
        double[] none = {};
        SampleStatus[] nothing = {};
        assertThat(encoder.encode(0, none, nothing, new String[] {"ab", "cd", "e"}))
                .isEqualTo(Made.hex("01 03 00 61 62 02 05 00 63 64 00 00 03 65 00 00 00 00 00"));
        assertThat(encoder.encode(0, none, nothing, new String[] {null, "abcd", null}))
                .isEqualTo(Made.hex("02 05 00 61 62 63 64"));
        for (String[] words : new String[][] {{null, "abcde", null}, {null, null, "abcd"}, {null, null, "abcdefg"}}) {
            assertThatThrownBy(() -> encoder.encode(0, none, nothing, words))
                    .hasMessageStartingWith("the value has no room for ");
        }
    }

    @Test
    void charactersAtTheEndMakeTheFrameAsLongAsTheyAre() {
        Profile profile = Made.message(new Framing.LengthField(ByteText.ofHex("AA"), 1, Made.U8, 0, 40))
                .checksum(Made.MODBUS_CRC)
                .at("x", 2, Made.number(Made.U8))
                .at("name", 3, new Field.Characters(0))
                .shown("x")
                .fact("name", "name")
                .profile();
        byte[] frame = new Encoder(profile).encode(0, new double[] {7}, new SampleStatus[] {OK}, new String[] {"abcd"});
        assertThat(frame).hasSize(9);
        Recorder recorder = Recorder.of(profile, new Chunk(1, frame));
        assertThat(recorder.values(0)).containsExactly(7.0);
        assertThat(recorder.facts).containsExactly("0: abcd");
    }

    @Test
    void aFrameOfOneLengthDoesNotGrow() {
        Profile profile = Made.message(new Framing.Fixed(ByteText.ofHex("AA"), 3))
                .at("kind", 1, Made.number(Made.U8))
                .at("x", 2, Made.number(Made.U8))
                .at("late", 3, Made.number(Made.U8))
                .when("kind", 1L)
                .shown("x", "late")
                .profile();
        Encoder encoder = new Encoder(profile);
        assertThat(encoder.encode(0, new double[] {1, 2}, new SampleStatus[] {OK, null}))
                .isEqualTo(Made.hex("AA 00 01"));
        assertThatThrownBy(() -> encoder.encode(0, new double[] {1, 2}, new SampleStatus[] {OK, OK}))
                .hasMessage("no frame can hold this: late ends at byte 4 where there are 3");
    }

    @Test
    void aConditionWithinATaggedValueDecides() {
        Profile profile = Made.message(new Framing.Packet(20))
                .tagged(tags(Map.of()))
                .tag("kind", 1, Made.number(Made.U16))
                .tag("x", 2, Made.number(Made.U8))
                .when("kind", 300L)
                .shown("x")
                .profile();
        assertThat(Recorder.of(profile, new Chunk(1, Made.hex("02 01 07"))).samples)
                .isEmpty();
        assertThat(Recorder.of(profile, new Chunk(1, Made.hex("01 02 2C 01 02 01 07")))
                        .values(0))
                .containsExactly(7.0);
        Encoder encoder = new Encoder(Made.message(new Framing.Packet(20))
                .tagged(tags(Map.of()))
                .tag("kind", 1, Made.number(Made.U16))
                .tag("x", 2, Made.number(Made.U8))
                .when("kind", 300L)
                .shown("x")
                .good("01 02 2C 01 02 01 07", Map.of("x", 7.0))
                .profile());
        assertThat(encoder.encode(new double[] {8}, Made.ok(1))).isEqualTo(Made.hex("01 02 2C 01 02 01 08"));
    }

    @Test
    void aChecksumMayHaveSixtyFourBits() {
        Checksum wide = new Checksum(
                new Checksum.Crc(64, 0x42F0E1EBA9EA3693L, 0, false, false, 0),
                Wire.Order.BIG,
                0,
                0,
                false,
                ByteText.EMPTY,
                1);
        Profile profile = Made.message(new Framing.Packet(40))
                .checksum(wide)
                .at("x", 0, Made.number(Made.wire(Wire.Kind.UNSIGNED, 8)))
                .shown("x")
                .profile();
        byte[] frame = new Encoder(profile).encode(new double[] {0x1p60}, Made.ok(1));
        assertThat(frame).hasSize(16);
        assertThat(Recorder.of(profile, new Chunk(1, frame)).values(0)).containsExactly(0x1p60);
        frame[15] ^= 1;
        assertThat(Recorder.of(profile, new Chunk(1, frame)).reasons().get(0)).startsWith("checksum ");
    }

    @Test
    void aChecksumMayHaveItsHighByteFirst() {
        Checksum big = new Checksum(
                new Checksum.Crc(16, 0x1021, 0, false, false, 0), Wire.Order.BIG, 0, 0, false, ByteText.EMPTY, 1);
        Profile profile = Made.message(new Framing.Packet(40))
                .checksum(big)
                .field("digits", new Field.AtByte(0), new Field.Characters(9))
                .fact("digits", "digits")
                .profile();
        // The check value of CRC-16/XMODEM over "123456789" is 31C3 (catalogue of CRC algorithms).
        assertThat(new Encoder(profile).encode(0, new double[0], new SampleStatus[0], new String[] {"123456789"}))
                .isEqualTo(Made.hex("31 32 33 34 35 36 37 38 39 31 C3"));
    }

    @Test
    void aLineWhosePatternWouldNotFindItAgainIsRefused() {
        Profile profile = Made.message(new Framing.Line(ByteText.ofHex("0A"), 40))
                .field("p", new Field.ByPattern(Pattern.compile("p=([0-9.]+)")), Made.decimal())
                .field("name", new Field.ByPattern(Pattern.compile("n=([a-z]+)")), new Field.Characters(0))
                .shown("p")
                .fact("name", "name")
                .good(
                        "70 3D 31 20 6E 3D 61 0A",
                        Map.of("p", 1.0),
                        Map.of("name", "a"),
                        Set.of(),
                        Example.Circumstances.NONE)
                .profile();
        assertThat(ProfileProof.of(profile).faults()).isEmpty();
        Encoder encoder = new Encoder(profile);
        assertThat(encoder.encode(0, new double[] {2.5}, new SampleStatus[] {OK}, new String[] {"bc"}))
                .isEqualTo("p=2.5 n=bc\n".getBytes(StandardCharsets.US_ASCII));
        assertThatThrownBy(() -> encoder.encode(0, new double[] {-1}, new SampleStatus[] {OK}, new String[] {"bc"}))
                .hasMessage("no line can hold this: p was not found by its pattern in \"p=-1 n=bc\"");
        Profile negative = Made.message(new Framing.Line(ByteText.ofHex("0A"), 40))
                .field(
                        "p",
                        new Field.ByPattern(Pattern.compile("p=([0-9.]+)")),
                        new Field.Decimal(new Curve.Linear(1, 0), Optional.of(0), true, Map.of()))
                .shown("p")
                .good("70 3D 31 0A", Map.of("p", 1.0))
                .profile();
        assertThat(ProfileProof.of(negative).faults())
                .extracting(ProfileProof.Fault::message)
                .containsExactly("example 1: cannot be written by the encoder: no line can hold this: p was not found"
                        + " by its pattern in \"p=+1\"");
    }

    @Test
    void aLineWithAChecksumIsWrittenAfterItsExample() {
        String line = "9,1.5,2*21 \r\n";
        Made made = Made.message(new Framing.Line(ByteText.ofHex("0D0A"), 40))
                .columns(',', 0)
                .checksum(new Checksum(new Checksum.Xor(), Wire.Order.BIG, 0, 0, true, ByteText.ofHex("2A"), 1))
                .field("p", new Field.InColumn(1), Made.decimal())
                .shown("p")
                .good(Ascii.wholeHex(line.getBytes(StandardCharsets.US_ASCII), 0, line.length()), Map.of("p", 1.5));
        Profile profile = made.profile();
        assertThat(ProfileProof.of(profile).faults()).isEmpty();
        assertThat(new Encoder(profile).encode(new double[] {1.5}, Made.ok(1)))
                .isEqualTo("9,1.5,2*21\r\n".getBytes(StandardCharsets.US_ASCII));
        assertThat(Recorder.of(profile, new Chunk(1, "9*39\r\n".getBytes(StandardCharsets.US_ASCII)))
                        .reasons())
                .containsExactly("the line has 1 columns where at least 2 are expected: \"9\"");
    }

    @Test
    void aCounterIsNotWhatAPresentationFormatIsAbout() {
        Source source = new Source.Characteristic(
                Optional.empty(),
                new java.util.UUID(0, 1),
                Source.By.READ,
                new settlemark.profile.Poll(1, 1, 0),
                true,
                false);
        Profile profile = Made.message(new Framing.Packet(20))
                .from(source)
                .at("count", 0, new Field.Binary(Made.U8, Optional.empty(), -1, Curve.IDENTITY, Map.of(), true))
                .at("p", 1, Made.number(Made.U8))
                .channel("p", settlemark.measure.Unit.ucum("bar"), 1, "p")
                .profile();
        Recorder recorder = Recorder.of(
                profile, new Chunk(1, 1, Made.hex("04 03 24 27 01 00 00")), new Chunk(2, 0, Made.hex("00 64")));
        // 100 thousand pascals are one bar; the counter is no number that the descriptor is about.
        assertThat(recorder.values(0)).containsExactly(1.0);
    }

    @Test
    void aCipherWithoutAllThatItNeedsTouchesNothing() {
        Secrets keyOnly = new Secrets(ByteText.EMPTY, ByteText.ofHex("00".repeat(16)));
        assertThat(new BthomeCipher(keyOnly).canClose()).isFalse();
        assertThat(new BthomeCipher(Secrets.NONE).isClosed(new byte[0], 0, 0)).isFalse();
        assertThat(new BthomeCipher(Secrets.NONE).marked(new byte[0], true)).isEmpty();
        assertThat(new BthomeCipher(Secrets.NONE).counter(new byte[3], 0, 3)).isZero();
    }

    @Test
    void aCounterOfALayoutWithConditionsIsForgottenAtAGap() {
        Profile profile = Made.message(new Framing.Packet(20))
                .from(new Source.CompanyData(0xFFFF))
                .at(
                        "count",
                        0,
                        new Field.Binary(
                                Made.wire(Wire.Kind.UNSIGNED, 8), Optional.empty(), -1, Curve.IDENTITY, Map.of(), true))
                .at("x", 8, Made.number(Made.U8))
                .when("count", 1L, 2L, 5L)
                .shown("x")
                .profile();
        ProbeDecoder decoder = new ProbeDecoder(profile);
        Recorder recorder = new Recorder();
        decoder.accept(new Chunk(1, Made.hex("01 00 00 00 00 00 00 00 09")), recorder);
        decoder.accept(new Chunk(1, Made.hex("01 00 00 00 00 00 00 00 09")), recorder);
        decoder.accept(new Chunk(1, Made.hex("05 00 00 00 00 00 00 00 09")), recorder);
        assertThat(decoder.missedFrames()).isEqualTo(3);
        decoder.reset();
        decoder.accept(new Chunk(1, Made.hex("02 00 00 00 00 00 00 00 09")), recorder);
        assertThat(decoder.missedFrames()).isEqualTo(3);
        assertThat(recorder.values(0)).hasSize(4);
    }
}
