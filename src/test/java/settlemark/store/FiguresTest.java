package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.session.SampleBlock;

/** How fast and how large: two hours of four channels at 10 Hz, a batch a second. */
@Tag("long")
final class FiguresTest {
    private static final int SECONDS = 7200;

    @TempDir
    Path folder;

    @Test
    void aBatchASecondIsCheap() throws Exception {
        Path file = folder.resolve("w.settlemark");
        double[] appendMillis = new double[SECONDS];
        long most = 0;
        try (SqliteStore store = Fixtures.open(file)) {
            long session = store.begin(Fixtures.log("log"));
            for (int n = 0; n < SECONDS; n++) {
                var batch = Fixtures.second(n);
                long from = System.nanoTime();
                store.append(session, batch);
                appendMillis[n] = (System.nanoTime() - from) / 1e6;
                most = Math.max(most, Files.size(Connections.log(file)));
            }
            Arrays.sort(appendMillis);
            print("append", appendMillis);
            print("whole channel", read(store, session, 0, Long.MAX_VALUE, SECONDS * 10));
            print("one minute", read(store, session, 3600 * Fixtures.SECOND, 3660 * Fixtures.SECOND, 600));
        }
        System.out.printf(
                Locale.ROOT,
                "file %d bytes, %.1f a sample; log at most %d bytes%n",
                Files.size(file),
                Files.size(file) / (40.0 * SECONDS),
                most);
        assertThat(most).isLessThan(2L * Connections.WAL_LIMIT_BYTES);
        assertThat(appendMillis[SECONDS / 2]).isLessThan(100);
    }

    private static double[] read(SqliteStore store, long session, long from, long to, int expected) throws Exception {
        double[] millis = new double[21];
        for (int i = 0; i < millis.length; i++) {
            long start = System.nanoTime();
            SampleBlock samples = store.samples(session, 1, 1, from, to);
            millis[i] = (System.nanoTime() - start) / 1e6;
            assertThat(samples.size()).isBetween(expected - 1, expected + 1);
        }
        Arrays.sort(millis);
        return millis;
    }

    private static void print(String what, double[] sortedMillis) {
        System.out.printf(
                Locale.ROOT,
                "%s: median %.2f ms, p99 %.2f ms, most %.2f ms%n",
                what,
                sortedMillis[sortedMillis.length / 2],
                sortedMillis[(int) (sortedMillis.length * 0.99)],
                sortedMillis[sortedMillis.length - 1]);
    }
}
