package settlemark.decode;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import settlemark.measure.Chunk;
import settlemark.profile.ByteText;
import settlemark.profile.Framing;
import settlemark.profile.Profile;
import settlemark.profile.Wire;

/** Binary frames after bytes that only look like one. */
final class LossOfStepTest {
    private static final Wire BIG_16 = new Wire(Wire.Kind.UNSIGNED, 2, Wire.Order.BIG);

    /** A5, two bytes of length, the number, a CRC: seven bytes. */
    private static final Profile PROFILE = Made.message(
                    new Framing.LengthField(ByteText.ofHex("A5"), 1, BIG_16, 0, 0x4000))
            .checksum(Made.MODBUS_CRC)
            .at("x", 3, Made.number(BIG_16))
            .shown("x")
            .profile();

    private static byte[] good(double x) {
        return new Encoder(PROFILE).encode(new double[] {x}, Made.ok(1));
    }

    /** So many bytes, full of starts of frames of that length. */
    private static byte[] nested(int bytes) {
        byte[] nested = new byte[bytes];
        for (int i = 0; i + 2 < bytes; i += 3) {
            nested[i] = (byte) 0xA5;
            nested[i + 1] = (byte) (bytes >> 8);
            nested[i + 2] = (byte) bytes;
        }
        return nested;
    }

    @Test
    void aRejectedFrameIsReportedWithTheTimeOfItsLastByte() {
        byte[] bad = good(1);
        bad[6] ^= 1;
        Recorder recorder = Recorder.of(
                PROFILE,
                new Chunk(1, good(7)),
                new Chunk(2, Arrays.copyOf(bad, 6)),
                new Chunk(3, Arrays.copyOfRange(bad, 6, 7)),
                new Chunk(4, good(8)));
        assertThat(recorder.values(0)).containsExactly(7.0, 8.0);
        assertThat(recorder.rejections).hasSize(1);
        assertThat(recorder.rejections.get(0).timeNanos()).isEqualTo(3);
        assertThat(recorder.rejections.get(0).offset()).isEqualTo(7);
        assertThat(recorder.rejections.get(0).reason()).startsWith("checksum ");
    }

    @Test
    void startsWithinARejectedFrameAreNotReportedAgainButThoseBehindItAre() {
        byte[] bad = Made.hex("A5 00 0A A5 00 07 00 00 00 00");
        Recorder recorder = Recorder.of(PROFILE, new Chunk(1, good(7)), new Chunk(2, bad), new Chunk(3, bad));
        assertThat(recorder.rejections).extracting(Rejected::offset).containsExactly(7L, 17L);
    }

    @Test
    void aGoodFrameWithinARejectedOneIsFound() {
        byte[] nested = nested(300);
        System.arraycopy(good(9), 0, nested, 291, 7);
        Recorder recorder =
                Recorder.of(PROFILE, new Chunk(1, nested), new Chunk(2, new byte[300]), new Chunk(3, good(8)));
        assertThat(recorder.values(0)).containsExactly(9.0, 8.0);
        assertThat(recorder.rejections).extracting(Rejected::offset).containsExactly(0L, 300L);
    }

    /** Twice the length and 262144 bytes are looked through: here the first 18 of 5461 starts. */
    @Test
    void theSearchWithinARejectedFrameEnds() {
        byte[] nested = nested(0x4000);
        System.arraycopy(good(5), 0, nested, 42, 7);
        System.arraycopy(good(9), 0, nested, 0x4000 - 7, 7);
        Recorder recorder = Recorder.of(
                PROFILE,
                new Chunk(1, good(7)),
                new Chunk(2, nested),
                new Chunk(3, new byte[0x4000 - 7]),
                new Chunk(4, good(8)));
        assertThat(recorder.values(0)).startsWith(7.0, 5.0).endsWith(8.0).doesNotContain(9.0);
    }
}
