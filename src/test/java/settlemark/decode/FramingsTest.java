package settlemark.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.profile.ByteText;
import settlemark.profile.Checksum;
import settlemark.profile.Field;
import settlemark.profile.Framing;
import settlemark.profile.Profile;
import settlemark.profile.Wire;

/** Framings against published vectors, and what they make of damage. */
final class FramingsTest {
    private static final Framing FLAGS = new Framing.Marked(
            ByteText.ofHex("7E"), ByteText.ofHex("7E"), new Framing.Flipped((byte) 0x7D, (byte) 0x20), 16);
    private static final Framing STX_ETX =
            new Framing.Marked(ByteText.ofHex("02"), ByteText.ofHex("03"), new Framing.Plain(), 8);

    /** Frames of one byte or more, the first of which is a number. */
    private static Profile bytes(Framing framing) {
        return Made.message(framing).at("x", 0, Made.number(Made.U8)).shown("x").profile();
    }

    private static Chunk chunk(long timeNanos, String hex) {
        return new Chunk(timeNanos, Made.hex(hex));
    }

    private static void bothWays(Stuffing stuffing, String content, String stuffed) {
        byte[] plain = Made.hex(content);
        byte[] travelling = Made.hex(stuffed);
        assertThat(stuffing.stuff(plain)).isEqualTo(travelling);
        byte[] out = new byte[travelling.length];
        int length = stuffing.unstuff(travelling, 0, travelling.length, out);
        assertThat(Arrays.copyOf(out, length)).isEqualTo(plain);
    }

    /** Source: S. Cheshire, M. Baker, 1999, and the examples of the public encyclopedia article, from memory. */
    @ParameterizedTest
    @CsvSource({
        "'', 01",
        "00, 01 01",
        "00 00, 01 01 01",
        "00 11 00, 01 02 11 01",
        "11 22 00 33, 03 11 22 02 33",
        "11 22 33 44, 05 11 22 33 44",
        "11 00 00 00, 02 11 01 01 01"
    })
    void overheadStuffing(String content, String stuffed) {
        bothWays(new OverheadStuffing(), content, stuffed);
    }

    /** Blocks of 254 bytes and one more or less; the same source. */
    @Test
    void overheadStuffingOfFullBlocks() {
        String to254 = run(1, 254);
        bothWays(new OverheadStuffing(), to254, "FF" + to254);
        bothWays(new OverheadStuffing(), "00" + to254, "01 FF" + to254);
        bothWays(new OverheadStuffing(), to254 + "FF", "FF" + to254 + "02 FF");
        bothWays(new OverheadStuffing(), run(2, 255) + "00", "FF" + run(2, 255) + "01 01");
        bothWays(new OverheadStuffing(), run(3, 255) + "00 01", "FE" + run(3, 255) + "02 01");
    }

    private static String run(int from, int to) {
        StringBuilder hex = new StringBuilder();
        for (int i = from; i <= to; i++) {
            hex.append(Ascii.wholeHex(new byte[] {(byte) i}, 0, 1));
        }
        return hex.toString();
    }

    /** Source: RFC 1055 (192 octal is C0, 333 DB, 334 DC, 335 DD) and RFC 1662, 4.2. */
    @Test
    void escapes() {
        Stuffing slip = Stuffing.of(Framing.Marked.slip(100));
        bothWays(slip, "01 C0 02 DB 03", "01 DB DC 02 DB DD 03");
        Stuffing flags = Stuffing.of((Framing.Marked) FLAGS);
        bothWays(flags, "7E 7D 03", "7D 5E 7D 5D 03");
        byte[] out = new byte[3];
        assertThat(flags.unstuff(Made.hex("7D 23"), 0, 2, out)).isEqualTo(1);
        assertThat(out[0]).isEqualTo((byte) 3);
    }

    @Test
    void anyContentComesBackThroughAnyStuffing() {
        long seed = System.nanoTime();
        System.out.println("FramingsTest seed " + seed);
        Random random = new Random(seed);
        List<Stuffing> all = List.of(
                new OverheadStuffing(),
                Stuffing.of(Framing.Marked.slip(100)),
                Stuffing.of((Framing.Marked) FLAGS),
                Stuffing.of((Framing.Marked) STX_ETX));
        for (int i = 0; i < 20_000; i++) {
            byte[] content = new byte[random.nextInt(700)];
            for (int b = 0; b < content.length; b++) {
                content[b] = (byte) (random.nextInt(4) == 0 ? random.nextInt(3) * 0x6F + 4 : random.nextInt(252) + 4);
            }
            for (Stuffing stuffing : all) {
                byte[] stuffed = stuffing.stuff(content);
                byte[] out = new byte[stuffed.length];
                int length = stuffing.unstuff(stuffed, 0, stuffed.length, out);
                assertThat(Arrays.equals(out, 0, length, content, 0, content.length))
                        .as("seed %d", seed)
                        .isTrue();
            }
        }
    }

    @Test
    void contentThatHoldsAMarkCannotTravelPlainly() {
        Encoder encoder = new Encoder(bytes(STX_ETX));
        SampleStatus[] ok = Made.ok(1);
        assertThat(encoder.encode(new double[] {65}, ok)).isEqualTo(Made.hex("02 41 03"));
        assertThatThrownBy(() -> encoder.encode(new double[] {3}, ok))
                .hasMessage("the content holds a mark at offset 0, and the framing has no escape for it: 03");
        assertThatThrownBy(() -> encoder.encode(new double[] {2}, ok)).hasMessageContaining("holds a mark");
    }

    @Test
    void framesBetweenMarks() {
        Recorder recorder = Recorder.of(
                bytes(STX_ETX), chunk(1, "FF FE 02 41 03"), chunk(2, "02 42"), chunk(3, "00 03 02 03 02 43 03 07"));
        assertThat(recorder.values(0)).containsExactly(65.0, 66.0, 67.0);
        assertThat(recorder.samples).extracting(s -> s.timeNanos()).containsExactly(1L, 3L, 3L);
        assertThat(recorder.rejections)
                .containsExactly(
                        new Rejected(1, 0, "stray bytes from FF where a frame starts with 02"),
                        new Rejected(3, 14, "stray bytes from 07 where a frame starts with 02"));
    }

    @Test
    void aLostEndIsSeenAtTheNextStart() {
        Recorder recorder = Recorder.of(bytes(STX_ETX), chunk(1, "02 41 42 02 43 03"));
        assertThat(recorder.values(0)).containsExactly(67.0);
        assertThat(recorder.rejections)
                .containsExactly(new Rejected(1, 0, "the frame has no end: another starts at its byte 3"));
    }

    @Test
    void aFrameThatIsTooLongIsRejectedAsSoonAsThatIsCertain() {
        Recorder recorder = Recorder.of(
                bytes(STX_ETX),
                chunk(1, "02 41 41 41 41 41 41 03"),
                chunk(2, "02 41 41 41 41 41 41 41"),
                chunk(3, "41 03 02 44 03"));
        assertThat(recorder.values(0)).containsExactly(65.0, 68.0);
        assertThat(recorder.rejections).containsExactly(new Rejected(2, 8, "the frame is longer than 8 bytes"));
        Recorder slip = Recorder.of(
                bytes(Framing.Marked.slip(6)),
                chunk(1, "C0 41 41 41 41 41 C0"),
                chunk(2, "41 41 41 41 41 41"),
                chunk(3, "41 41 C0 45 C0"));
        assertThat(slip.values(0)).containsExactly(65.0, 69.0);
        assertThat(slip.rejections).containsExactly(new Rejected(2, 7, "the frame is longer than 6 bytes"));
    }

    @Test
    void oneFlagMayEndAFrameAndStartTheNext() {
        Recorder recorder = Recorder.of(
                bytes(FLAGS),
                chunk(1, "41 7E 42 43 7E"),
                chunk(2, "7E 44 7E 7D 5E 7E"),
                chunk(3, "45 7D 7E"),
                chunk(4, "46 7E"));
        assertThat(recorder.values(0)).containsExactly(66.0, 68.0, 126.0, 70.0);
        assertThat(recorder.rejections)
                .containsExactly(
                        new Rejected(1, 0, "stray bytes from 41 where a frame starts with 7E"),
                        new Rejected(3, 10, "the frame was given up: it ends after the escape 7D"));
        ProbeDecoder decoder = new ProbeDecoder(bytes(FLAGS));
        decoder.accept(chunk(1, "7E 41 7E"), new Recorder());
        assertThat(decoder.undecidedBytes()).isZero();
    }

    @Test
    void withoutAStartMarkTheFirstFrameMayHaveLostItsBeginning() {
        for (Framing framing : List.of(Framing.Marked.slip(20), new Framing.Cobs(20))) {
            String end = framing instanceof Framing.Cobs ? "02 41 00" : "41 C0";
            Recorder recorder = Recorder.of(bytes(framing), chunk(1, end + end));
            assertThat(recorder.reasons()).containsExactly("the first frame may have lost its beginning");
            assertThat(recorder.values(0)).containsExactly(65.0);
            Recorder again = new Recorder();
            ProbeDecoder decoder = new ProbeDecoder(bytes(framing));
            decoder.accept(chunk(1, end + end), again);
            decoder.reset();
            decoder.accept(chunk(2, end + end), again);
            assertThat(again.values(0)).containsExactly(65.0, 65.0);
            assertThat(again.rejections).hasSize(2);
        }
        Profile proved = Made.message(Framing.Marked.slip(20))
                .at("kind", 0, Made.literal("41"))
                .at("x", 1, Made.number(Made.U8))
                .shown("x")
                .profile();
        assertThat(Recorder.of(proved, chunk(1, "41 05 C0")).values(0)).containsExactly(5.0);
    }

    @Test
    void badEscapesAreRejectedAndTheNextFrameArrives() {
        Recorder recorder = Recorder.of(bytes(Framing.Marked.slip(20)), chunk(1, "C0 41 DB DC DB 42 C0 DB C0 42 C0"));
        assertThat(recorder.values(0)).containsExactly(66.0);
        assertThat(recorder.rejections)
                .containsExactly(
                        new Rejected(1, 1, "escape DB 42 at byte 3 stands for nothing"),
                        new Rejected(1, 7, "escape DB at byte 0 stands for nothing"));
        Recorder cobs = Recorder.of(bytes(new Framing.Cobs(20)), chunk(1, "00 02 41 05 42 00 02 42 00"));
        assertThat(cobs.values(0)).containsExactly(66.0);
        assertThat(cobs.rejections)
                .containsExactly(new Rejected(1, 1, "a block of 5 bytes at byte 2 where the frame has 2"));
    }

    @Test
    void silenceEndsAFrame() {
        Profile profile = Made.message(new Framing.IdleGap(5_000_000, 4))
                .at("kind", 0, Made.literal("41"))
                .at("x", 1, Made.number(Made.U8))
                .shown("x")
                .profile();
        Recorder recorder = new Recorder();
        ProbeDecoder decoder = new ProbeDecoder(profile);
        decoder.accept(chunk(0, "41"), recorder);
        decoder.accept(chunk(4_999_999, "07"), recorder);
        assertThat(recorder.events).isEmpty();
        assertThat(decoder.undecidedBytes()).isEqualTo(2);
        decoder.accept(chunk(9_999_999, "41 08 00 00"), recorder);
        assertThat(recorder.samples).extracting(s -> s.timeNanos()).containsExactly(4_999_999L);
        decoder.accept(chunk(10_000_000, "09"), recorder);
        decoder.accept(chunk(12_000_000, "09"), recorder);
        decoder.accept(chunk(17_000_000, "41 0A"), recorder);
        decoder.accept(chunk(30_000_000, "42 0A"), recorder);
        decoder.finish(recorder);
        decoder.finish(recorder);
        assertThat(recorder.values(0)).containsExactly(7.0, 10.0);
        assertThat(recorder.rejections)
                .containsExactly(
                        new Rejected(10_000_000, 2, "the frame is longer than 4 bytes"),
                        new Rejected(30_000_000, 10, "kind must be 41, got 42"));
    }

    @Test
    void theFirstFrameBeforeASilenceMayHaveLostItsBeginning() {
        Recorder recorder = new Recorder();
        ProbeDecoder decoder = new ProbeDecoder(bytes(new Framing.IdleGap(1_000_000, 10)));
        decoder.accept(chunk(0, "01"), recorder);
        decoder.accept(chunk(1_000_000, "02"), recorder);
        decoder.accept(chunk(2_000_000, "03"), recorder);
        decoder.reset();
        decoder.accept(chunk(3_000_000, "04"), recorder);
        decoder.accept(chunk(4_000_000, "05"), recorder);
        decoder.finish(recorder);
        assertThat(recorder.values(0)).containsExactly(2.0, 5.0);
        assertThat(recorder.rejections)
                .containsExactly(
                        new Rejected(0, 0, "the first frame may have lost its beginning"),
                        new Rejected(3_000_000, 3, "the first frame may have lost its beginning"));
    }

    @Test
    void bytesMayFollowTheChecksum() {
        Checksum sum = new Checksum(new Checksum.Sum(8, false), Wire.Order.BIG, 1, 1, false, ByteText.EMPTY, 1);
        Profile fixed = Made.message(new Framing.Fixed(ByteText.ofHex("68"), 5))
                .checksum(sum)
                .at("x", 1, Made.number(Made.U16))
                .at("end", 4, Made.literal("16"))
                .shown("x")
                .profile();
        assertThat(new Encoder(fixed).encode(new double[] {0x0201}, Made.ok(1))).isEqualTo(Made.hex("68 01 02 03 16"));
        Recorder recorder = Recorder.of(fixed, chunk(1, "68 01 02 03 16 68 01 02 04 16 68 01 02 03 17"));
        assertThat(recorder.values(0)).containsExactly(513.0);
        assertThat(recorder.reasons()).containsExactly("checksum 04 where the bytes give 03", "end must be 16, got 17");
        Profile hex = Made.message(
                        new Framing.Marked(ByteText.ofHex("3A"), ByteText.ofHex("0D"), new Framing.Plain(), 20))
                .checksum(new Checksum(new Checksum.Xor(), Wire.Order.BIG, 0, 2, true, ByteText.ofHex("2A"), 1))
                .columns(',', 1)
                .field("x", new Field.InColumn(0), Made.decimal())
                .shown("x")
                .profile();
        // '7' is 37; two bytes follow it that nothing covers.
        assertThat(Recorder.of(
                                hex,
                                new Chunk(
                                        1,
                                        ":7*37zz\r:7*38zz\r:7*3xzz\r"
                                                .getBytes(java.nio.charset.StandardCharsets.US_ASCII)))
                        .events)
                .hasSize(3)
                .first()
                .hasFieldOrPropertyWithValue("value", 7.0);
    }

    @Test
    void aRegisterAnswerIsAFixedFrame() {
        // 02 03 04 then 0x00EB and 0x3F80 0000 would be float 1.0 in ABCD; CRC by the catalogue's MODBUS parameters.
        Profile profile = Made.message(new Framing.Fixed(ByteText.EMPTY, 11))
                .checksum(Made.MODBUS_CRC)
                .at("(function)", 1, Made.literal("03"))
                .at("(byte count)", 2, Made.literal("06"))
                .at("t", 3, Made.scaled(new Wire(Wire.Kind.SIGNED, 2, Wire.Order.BIG), 0.1))
                .at("f", 5, Made.number(new Wire(Wire.Kind.IEEE_FLOAT, 4, Wire.Order.BIG_WORDS_SWAPPED)))
                .shown("t", "f")
                .profile();
        byte[] answer = new Encoder(profile).encode(new double[] {23.5, 1}, Made.ok(2));
        assertThat(Arrays.copyOf(answer, 9)).isEqualTo(Made.hex("00 03 06 00 EB 00 00 3F 80"));
        Recorder recorder = Recorder.of(profile, new Chunk(1, answer));
        assertThat(recorder.values(0)).containsExactly(23.5);
        assertThat(recorder.values(1)).containsExactly(1.0);
    }

    @Test
    void aFrameShorterThanItsFieldsIsRejected() {
        Profile profile = Made.message(new Framing.Packet(9))
                .at("x", 0, Made.number(Made.U16))
                .at("name", 3, new Field.Characters(0))
                .field(
                        "nothing",
                        new Field.AtByte(0),
                        new Field.Binary(
                                Made.U8, Optional.empty(), -1, settlemark.profile.Curve.IDENTITY, Map.of(), false))
                .when("x", 7L)
                .shown("x")
                .fact("name", "name")
                .profile();
        assertThat(Recorder.of(profile, chunk(1, "01 00")).reasons())
                .containsExactly("the frame has 2 bytes where the fields need 3");
        Recorder recorder = Recorder.of(profile, chunk(1, "01 00 00"));
        assertThat(recorder.values(0)).containsExactly(1.0);
        assertThat(recorder.facts).containsExactly("0: ");
    }
}
