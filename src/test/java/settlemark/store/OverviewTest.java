package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.codec.Tally;
import settlemark.session.Overview;
import settlemark.session.SampleBlock;
import settlemark.session.Span;
import settlemark.session.StoreException;
import settlemark.session.WriteBatch;

/** Overviews beside the samples themselves, from the first batch on over every level to the end. */
final class OverviewTest {
    private static final long PERIOD = 100_000_000L;

    @TempDir
    Path folder;

    private Random random = new Random(0);
    private final List<long[]> times = new ArrayList<>();
    private final List<double[]> values = new ArrayList<>();
    private final List<byte[]> statuses = new ArrayList<>();
    private long stored;

    @BeforeEach
    void seed() {
        long seed = System.nanoTime();
        System.out.println("seed " + seed);
        random = new Random(seed);
    }

    /** Two channels that arrive together; now and then a value is none. */
    private WriteBatch batch(int scans) {
        long[] at = new long[scans];
        double[] left = new double[scans];
        double[] right = new double[scans];
        byte[] status = new byte[scans];
        for (int i = 0; i < scans; i++) {
            at[i] = (stored + i) * PERIOD + random.nextInt(1000);
            left[i] = Math.rint(Math.sin((stored + i) * 0.001) * 1000 + random.nextInt(9)) / 1000;
            right[i] = random.nextGaussian();
            status[i] = (byte) (random.nextInt(50) == 0 ? 4 : 0);
        }
        stored += scans;
        times.add(at);
        values.add(left);
        statuses.add(status);
        return new WriteBatch(
                0,
                List.of(),
                List.of(new SampleBlock(0, 0, at, left, status), new SampleBlock(0, 1, at, right, new byte[scans])),
                List.of(),
                List.of(),
                stored * PERIOD);
    }

    private Overview expected(Span span, int columns) {
        Tally[] tallies = new Tally[columns];
        Arrays.setAll(tallies, i -> new Tally());
        double width = ((double) span.toNanos() - span.fromNanos() + 1) / columns;
        for (int b = 0; b < times.size(); b++) {
            for (int i = 0; i < times.get(b).length; i++) {
                long time = times.get(b)[i];
                if (time >= span.fromNanos() && time <= span.toNanos() && statuses.get(b)[i] == 0) {
                    int column = Math.min(columns - 1, (int) ((time - span.fromNanos()) * (1 / width)));
                    tallies[column].add(values.get(b)[i]);
                }
            }
        }
        return new Overview(
                0,
                0,
                span,
                Arrays.stream(tallies).mapToLong(Tally::count).toArray(),
                Arrays.stream(tallies).mapToDouble(Tally::min).toArray(),
                Arrays.stream(tallies).mapToDouble(Tally::max).toArray(),
                Arrays.stream(tallies).mapToDouble(Tally::mean).toArray(),
                Arrays.stream(tallies).mapToDouble(Tally::first).toArray(),
                Arrays.stream(tallies).mapToDouble(Tally::last).toArray());
    }

    private void assertExact(SqliteStore store, Span span, int columns) throws StoreException {
        Overview exact = store.overview(1, 0, List.of(0), span, columns, Overview.Edges.EXACT)
                .get(0);
        Overview expected = expected(span, columns);
        assertThat(exact.counts()).isEqualTo(expected.counts());
        assertThat(exact.mins()).isEqualTo(expected.mins());
        assertThat(exact.maxs()).isEqualTo(expected.maxs());
        assertThat(exact.firsts()).isEqualTo(expected.firsts());
        assertThat(exact.lasts()).isEqualTo(expected.lasts());
        for (int i = 0; i < columns; i++) {
            if (expected.counts()[i] > 0) {
                assertThat(exact.means()[i]).isCloseTo(expected.means()[i], within(1e-12));
            }
        }
    }

    /** Aligned columns hold the same samples, each at most one column from where it belongs. */
    private void assertAligned(SqliteStore store, Span span, int columns) throws StoreException {
        List<Overview> both = store.overview(1, 0, List.of(1, 0), span, columns, Overview.Edges.ALIGNED);
        assertThat(both).extracting(Overview::channel).containsExactly(1, 0);
        Overview aligned = both.get(1);
        Overview expected = expected(span, columns);
        long sum = 0;
        long expectedSum = 0;
        for (int i = 0; i < columns; i++) {
            assertThat(sum + aligned.counts()[i]).isGreaterThanOrEqualTo(expectedSum);
            expectedSum += expected.counts()[i];
            sum += aligned.counts()[i];
            double low = nearby(expected.mins(), i, true);
            double high = nearby(expected.maxs(), i, false);
            if (aligned.counts()[i] > 0) {
                assertThat(aligned.mins()[i]).isBetween(low, high);
                assertThat(aligned.maxs()[i]).isBetween(low, high);
            }
        }
        assertThat(sum).isEqualTo(expectedSum);
    }

    private static double nearby(double[] extremes, int column, boolean least) {
        double found = Double.NaN;
        for (int i = Math.max(0, column - 1); i <= Math.min(extremes.length - 1, column + 1); i++) {
            if (Double.isNaN(found) || (least ? extremes[i] < found : extremes[i] > found)) {
                found = extremes[i];
            }
        }
        return found;
    }

    @Test
    void overviewsSayWhatTheSamplesSayOverEveryLevel() throws StoreException {
        try (SqliteStore store = Fixtures.open(folder.resolve("w.settlemark"))) {
            long session = store.begin(Fixtures.log("log"));
            int next = 10;
            while (stored < 300_000) {
                store.append(session, batch(1 + random.nextInt(6000)));
                if (times.size() >= next) {
                    next = 2 * next;
                    Span all = new Span(0, stored * PERIOD);
                    assertExact(store, all, 1 + random.nextInt(30));
                    assertAligned(store, all, 7);
                    long from = random.nextInt(2000) * PERIOD;
                    assertExact(store, new Span(from, from + random.nextInt(3000) * PERIOD), 100);
                }
            }
            Span all = new Span(0, stored * PERIOD);
            assertAligned(store, all, 3);
            assertAligned(store, all, 40);
            assertExact(store, all, 500);
            assertExact(store, new Span(stored / 3 * PERIOD + 5, stored / 2 * PERIOD), 31);
            SampleBlock last = store.last(session, 0, 0);
            long[] latest = times.get(times.size() - 1);
            assertThat(last.timesNanos()).containsExactly(latest[latest.length - 1]);
            store.end(session, stored * PERIOD);
            assertExact(store, all, 500);
            assertAligned(store, all, 3);
            assertThat(store.last(session, 0, 0).values()).isEqualTo(last.values());
            assertThat(store.last(session, 1, 0).size()).isZero();
        }
    }
}
