package settlemark.codec;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import settlemark.codec.PackedRows.Row;

final class PackedRowsTest {
    private static void assertSame(List<Row> back, List<Row> rows) {
        assertThat(back).usingRecursiveComparison().isEqualTo(rows);
    }

    @Test
    void anyRowsComeBackEqual() {
        long seed = System.nanoTime();
        System.out.println("seed " + seed);
        Random random = new Random(seed);
        for (int trial = 0; trial < 1000; trial++) {
            List<Row> rows = new ArrayList<>();
            long sequence = 0;
            for (int i = random.nextInt(100); i > 0; i--) {
                byte[] content = new byte[random.nextInt(30)];
                random.nextBytes(content);
                sequence += 1 + random.nextInt(3) / 2;
                rows.add(new Row(sequence, random.nextLong(), random.nextInt(4), random.nextInt(3), -1, content));
            }
            assertSame(PackedRows.unpack(PackedRows.pack(rows, random.nextBoolean())), rows);
        }
    }

    @Test
    void textOfAGaugeTakesAFewBytesALine() {
        Random random = new Random(5);
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < 4096; i++) {
            byte[] line = ("P +3." + (500 + random.nextInt(10)) + " +6.9" + random.nextInt(10) + "\r\n")
                    .getBytes(StandardCharsets.US_ASCII);
            rows.add(new Row(i, i * 100_000_000L + random.nextInt(10_000), 0, 1, 0, line));
        }
        byte[] packed = PackedRows.pack(rows, false);
        assertSame(PackedRows.unpack(packed), rows);
        // two random digits and 13 bits of jitter are 2.5 bytes
        assertThat(packed.length / 4096.0).isBetween(2.4, 6.0);
        assertThat(PackedRows.pack(rows, true).length / 4096.0).isBetween(2.4, 9.0);
    }

    @Test
    void anyDamageIsFound() {
        Random random = new Random(6);
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            rows.add(new Row(i, i, 0, 1, 0, "same again".getBytes(StandardCharsets.US_ASCII)));
        }
        byte[] whole = PackedRows.pack(rows, false);
        for (int at = 0; at < whole.length; at++) {
            byte[] damaged = whole.clone();
            damaged[at] ^= (byte) (1 + random.nextInt(255));
            assertThatThrownBy(() -> PackedRows.unpack(damaged))
                    .as("byte " + at)
                    .isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void samplesAreNoRows() {
        byte[] samples = PackedSamples.pack(List.of(Blocks.random(new Random(1), 0, 0, 5)));
        assertThatThrownBy(() -> PackedRows.unpack(samples)).hasMessageContaining("other columns");
        assertThat(PackedRows.unpack(PackedRows.pack(List.of(), true))).isEmpty();
    }
}
