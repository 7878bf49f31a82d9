package settlemark.decode;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.measure.Chunk;
import settlemark.profile.ByteText;
import settlemark.profile.Framing;
import settlemark.profile.Profile;

/** Marks of two bytes, and escapes that could be taken for marks. */
final class LongMarksTest {
    /** The classic pair 10 02 and 10 03, with 10 doubled in between; twelve bytes at most. */
    private static final Profile DOUBLED = bytes(new Framing.Marked(
            ByteText.ofHex("1002"),
            ByteText.ofHex("1003"),
            new Framing.Stuffed((byte) 0x10, List.of((byte) 0x10), List.of((byte) 0x10)),
            12));

    /** An escape before a mark takes its meaning. */
    private static final Profile ESCAPED_MARKS = bytes(new Framing.Marked(
            ByteText.ofHex("02"),
            ByteText.ofHex("03"),
            new Framing.Stuffed(
                    (byte) 0x1B,
                    List.of((byte) 0x02, (byte) 0x03, (byte) 0x1B),
                    List.of((byte) 0x02, (byte) 0x03, (byte) 0x1B)),
            12));

    private static Profile bytes(Framing framing) {
        return Made.message(framing)
                .at("x", 0, Made.number(Made.U8))
                .at("y", 1, Made.number(Made.U8))
                .shown("x", "y")
                .profile();
    }

    private static Recorder each(Profile profile, String hex) {
        byte[] bytes = Made.hex(hex);
        Chunk[] chunks = new Chunk[bytes.length];
        for (int i = 0; i < bytes.length; i++) {
            chunks[i] = new Chunk(i, new byte[] {bytes[i]});
        }
        return Recorder.of(profile, chunks);
    }

    @ParameterizedTest
    @CsvSource({
        "10 02 41 42 10 03, 65, 66",
        "10 02 10 10 42 10 03, 16, 66",
        "10 02 10 10 03 10 03, 16, 3",
        "10 02 41 10 10 10 03, 65, 16",
        "10 02 02 10 10 10 03, 2, 16"
    })
    void aDoubledByteBeginsNoMark(String hex, double x, double y) {
        Recorder whole = Recorder.of(DOUBLED, new Chunk(1, Made.hex(hex)));
        assertThat(whole.values(0)).containsExactly(x);
        assertThat(whole.values(1)).containsExactly(y);
        Recorder each = each(DOUBLED, hex);
        assertThat(each.values(0)).containsExactly(x);
        assertThat(each.values(1)).containsExactly(y);
        assertThat(each.rejections).isEmpty();
        assertThat(each.samples.get(0).timeNanos()).isEqualTo(Made.hex(hex).length - 1);
    }

    @ParameterizedTest
    @CsvSource({"02 1B 03 42 03, 3, 66", "02 41 1B 03 03, 65, 3", "02 1B 02 1B 1B 03, 2, 27", "02 1B 1B 1B 03 03, 27, 3"
    })
    void anEscapedMarkIsNone(String hex, double x, double y) {
        for (Recorder recorder :
                List.of(Recorder.of(ESCAPED_MARKS, new Chunk(1, Made.hex(hex))), each(ESCAPED_MARKS, hex))) {
            assertThat(recorder.values(0)).containsExactly(x);
            assertThat(recorder.values(1)).containsExactly(y);
            assertThat(recorder.rejections).isEmpty();
        }
    }

    @Test
    void anEscapeThatStandsForNothingHidesNoMark() {
        Recorder recorder = each(ESCAPED_MARKS, "02 1B 41 03 02 43 44 03");
        assertThat(recorder.values(0)).containsExactly(67.0);
        assertThat(recorder.reasons()).containsExactly("escape 1B 41 at byte 0 stands for nothing");
    }

    @Test
    void theLongestFrameIsTakenWithBothItsMarks() {
        Recorder recorder = Recorder.of(
                DOUBLED,
                new Chunk(1, Made.hex("10 02 41 42 43 44 45 46 47 48 10 03")),
                new Chunk(2, Made.hex("10 02 41 42 43 44 45 46 47 48 49 10")),
                new Chunk(3, Made.hex("03 10 02 4A 4B 10 03")));
        assertThat(recorder.values(0)).containsExactly(65.0, 74.0);
        assertThat(recorder.rejections).containsExactly(new Rejected(2, 12, "the frame is longer than 12 bytes"));
    }

    @Test
    void aFrameThatIsTooLongIsRejectedAtTheLastByteThatItMayHave() {
        Recorder recorder = each(DOUBLED, "FF 10 02 41 42 43 44 45 46 47 48 49 4A 4B 10 03 10 02 4C 4D 10 03");
        assertThat(recorder.values(0)).containsExactly(76.0);
        assertThat(recorder.rejections)
                .containsExactly(
                        new Rejected(0, 0, "stray bytes from FF where a frame starts with 10 02"),
                        new Rejected(12, 1, "the frame is longer than 12 bytes"));
    }

    @Test
    void theEndOfAFrameThatIsTooLongMayBeginTheNextOne() {
        String long11 = "10 02 41 42 43 44 45 46 47 48 49";
        Recorder recorder = Recorder.of(DOUBLED, new Chunk(1, Made.hex(long11 + " 10 02 4C 4D 10 03")));
        assertThat(recorder.values(0)).containsExactly(76.0);
        assertThat(recorder.reasons()).hasSize(1);
        Recorder split =
                Recorder.of(DOUBLED, new Chunk(1, Made.hex(long11 + " 10")), new Chunk(2, Made.hex("02 4C 4D 10 03")));
        assertThat(split.values(0)).containsExactly(76.0);
        assertThat(split.reasons()).hasSize(1);
    }

    @Test
    void aStartWithinAFrameIsReportedWhenAllOfItIsThere() {
        Recorder recorder = each(DOUBLED, "10 02 41 42 10 03 10 02 43 10 02 44 45 10 03");
        assertThat(recorder.values(0)).containsExactly(65.0, 68.0);
        assertThat(recorder.rejections)
                .containsExactly(new Rejected(10, 6, "the frame has no end: another starts at its byte 3"));
    }

    @Test
    void bytesOfAFrameUnderWayAreUndecided() {
        ProbeDecoder decoder = new ProbeDecoder(DOUBLED);
        Recorder recorder = new Recorder();
        decoder.accept(new Chunk(1, Made.hex("10 02 41")), recorder);
        assertThat(decoder.undecidedBytes()).isEqualTo(3);
        decoder.accept(new Chunk(2, Made.hex("42 10 03")), recorder);
        assertThat(decoder.undecidedBytes()).isZero();
        ProbeDecoder flags = new ProbeDecoder(bytes(new Framing.Marked(
                ByteText.ofHex("7E"), ByteText.ofHex("7E"), new Framing.Flipped((byte) 0x7D, (byte) 0x20), 16)));
        flags.accept(new Chunk(1, Made.hex("7E 41 42 7E 43")), recorder);
        assertThat(flags.undecidedBytes()).isEqualTo(2);
    }

    @Test
    void aBlockWithoutContentIsNoFrame() {
        Recorder recorder = Recorder.of(bytes(new Framing.Cobs(20)), new Chunk(1, Made.hex("00 01 00 03 41 42 00")));
        assertThat(recorder.values(0)).containsExactly(65.0);
        assertThat(recorder.rejections).isEmpty();
    }
}
