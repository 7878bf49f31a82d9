package settlemark.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import settlemark.measure.Chunk;

class WireTest {
    private static final long SEED = 5;

    /** At 9600 baud a byte of ten bits takes 1.04 ms: 40 bytes cannot be there before 41.6 ms. */
    @Test
    void framesQueueUpInOrderAndNoByteIsFasterThanTheLine() {
        System.out.println("wire seed " + SEED);
        Wire wire = new Wire(9600, new Random(SEED));
        wire.send(0, "abcdefghijklmnopqrst".getBytes(StandardCharsets.US_ASCII));
        wire.send(1_000_000, "ABCDEFGHIJKLMNOPQRST".getBytes(StandardCharsets.US_ASCII));
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        long last = 0;
        while (wire.nextLookNanos() < 200_000_000) {
            @Nullable Chunk chunk = wire.look();
            if (chunk != null) {
                all.writeBytes(chunk.bytes());
                last = chunk.timeNanos();
                assertThat(all.size() * 1_041_666L).isLessThanOrEqualTo(last);
            }
        }
        assertThat(all.toString(StandardCharsets.US_ASCII)).isEqualTo("abcdefghijklmnopqrstABCDEFGHIJKLMNOPQRST");
        assertThat(last).isBetween(41_000_000L, 75_000_000L);
    }
}
