package settlemark.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

class ThinnedTest {
    private static final long MS = 1_000_000L;
    private static final long STEP = 100 * MS;

    private static Lane.TraceLine line(long[] times, double[] values) {
        return new Lane.TraceLine("", "", LineStyle.UPSTREAM, times, values, 3 * STEP);
    }

    private static Lane.TraceLine steady(int count, IntToDoubleFunction value) {
        long[] times = new long[count];
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            times[i] = i * STEP;
            values[i] = value.applyAsDouble(i);
        }
        return line(times, values);
    }

    @Test
    void oneSampleSpikesAmongAMillionSurvive() {
        Lane.TraceLine trace = steady(1_000_000, i -> i == 123_457 ? 99 : i == 777_777 ? -99 : 1);
        Thinned thinned = Thinned.of(trace, 0, 1_000_000 * STEP, 1_000_000 * STEP, 700);
        assertThat(thinned.size()).isLessThanOrEqualTo(4 * 701);
        assertThat(thinned.extent(0, 100_000).orElseThrow()).containsExactly(-99, 99);
    }

    @Test
    void columnsApartKeepTheirFirstLeastGreatestAndLast() {
        Random random = seeded(42);
        int perColumn = 60;
        Lane.TraceLine trace = steady(20_000, i -> 20 * (i / perColumn % 2) + random.nextGaussian());
        int columns = 20_000 / perColumn + 1;
        Thinned thinned = Thinned.of(trace, 0, columns * perColumn * STEP, 20_000 * STEP, columns);
        Map<Integer, double[]> all = columns(trace, perColumn);
        Map<Integer, double[]> kept = columns(thinned, perColumn);
        assertThat(kept.keySet()).isEqualTo(all.keySet());
        all.forEach((column, four) ->
                assertThat(kept.get(column)).as("column %d", column).containsExactly(four));
    }

    @Test
    void everyColumnKeepsItsLeastAndGreatestWithFewerThanFourPointsInNoise() {
        Random random = seeded(43);
        int perColumn = 60;
        Lane.TraceLine trace = steady(20_000, i -> random.nextGaussian());
        int columns = 20_000 / perColumn + 1;
        Thinned thinned = Thinned.of(trace, 0, columns * perColumn * STEP, 20_000 * STEP, columns);
        Map<Integer, double[]> all = columns(trace, perColumn);
        Map<Integer, double[]> kept = columns(thinned, perColumn);
        assertThat(kept.keySet()).isEqualTo(all.keySet());
        all.forEach((column, four) -> {
            double[] own = Objects.requireNonNull(kept.get(column));
            assertThat(own[1]).as("least of column %d", column).isEqualTo(four[1]);
            assertThat(own[2]).as("greatest of column %d", column).isEqualTo(four[2]);
        });
        assertThat(thinned.size()).isBetween(2 * columns, 3 * columns);
        assertThat(thinned.value(0)).isEqualTo(trace.values()[0]);
        assertThat(thinned.value(thinned.size() - 1)).isEqualTo(trace.values()[19_999]);
    }

    /** Two in a hundred differ where the pen turns; so they do with all four values of each column kept. */
    @Test
    void aNoisyLineInksWhatAllItsSamplesInk() {
        Random random = seeded(44);
        int columns = 400;
        int count = columns * 50;
        Lane.TraceLine trace =
                steady(count, i -> 40 + 20 * Math.sin(i / 3000.0) + 2 * random.nextGaussian() + (i == 7777 ? 30 : 0));
        Thinned thinned = Thinned.of(trace, 0, count * STEP, count * STEP, columns);
        double pxPerSecond = columns / (count * STEP / 1e9);
        int[] whole = inked(columns, count, i -> i * STEP / 1e9 * pxPerSecond, i -> trace.values()[i]);
        int[] drawn = inked(columns, thinned.size(), i -> thinned.seconds(i) * pxPerSecond, thinned::value);
        long ink = 0;
        long different = 0;
        for (int i = 0; i < whole.length; i++) {
            ink += whole[i];
            different += Math.abs(whole[i] - drawn[i]);
        }
        assertThat((double) different / ink).isLessThan(0.025);
    }

    /** How dark each pixel is where all points are joined by a line of two pixels. */
    private static int[] inked(int width, int count, IntToDoubleFunction x, IntToDoubleFunction y) {
        BufferedImage image = new BufferedImage(width, 100, BufferedImage.TYPE_BYTE_GRAY);
        Graphics2D g = image.createGraphics();
        Quality.smooth(g);
        g.setStroke(LineStyle.UPSTREAM.stroke(1));
        Path2D path = new Path2D.Double();
        path.moveTo(x.applyAsDouble(0), y.applyAsDouble(0));
        for (int i = 1; i < count; i++) {
            path.lineTo(x.applyAsDouble(i), y.applyAsDouble(i));
        }
        g.draw(path);
        g.dispose();
        return image.getRaster().getPixels(0, 0, width, 100, (int[]) null);
    }

    private static Random seeded(long seed) {
        System.out.println("seed " + seed);
        return new Random(seed);
    }

    private static Map<Integer, double[]> columns(Lane.TraceLine trace, int perColumn) {
        Map<Integer, double[]> columns = new HashMap<>();
        for (int i = 0; i < trace.values().length; i++) {
            gather(columns, i * STEP / 1e9, trace.values()[i], perColumn * STEP / 1e9);
        }
        return columns;
    }

    private static Map<Integer, double[]> columns(Thinned thinned, int perColumn) {
        Map<Integer, double[]> columns = new HashMap<>();
        for (int i = 0; i < thinned.size(); i++) {
            gather(columns, thinned.seconds(i), thinned.value(i), perColumn * STEP / 1e9);
        }
        return columns;
    }

    private static void gather(Map<Integer, double[]> columns, double second, double value, double width) {
        double[] four = columns.computeIfAbsent(
                (int) Math.floor(second / width * (1 + 1e-12)), c -> new double[] {value, value, value, value});
        four[1] = Math.min(four[1], value);
        four[2] = Math.max(four[2], value);
        four[3] = value;
    }

    @Test
    void fewSamplesAreKeptAsTheyAre() {
        Thinned thinned = Thinned.of(steady(5, i -> i), 0, 10 * STEP, 4 * STEP, 1000);
        assertThat(thinned.size()).isEqualTo(5);
        for (int i = 0; i < 5; i++) {
            assertThat(thinned.seconds(i)).isEqualTo(i * STEP / 1e9);
            assertThat(thinned.value(i)).isEqualTo(i);
        }
        assertThat(thinned.gaps()).isEmpty();
    }

    @Test
    void notANumberAndALongPauseAreBothGaps() {
        Lane.TraceLine nan = steady(100, i -> i > 40 && i < 60 ? Double.NaN : i);
        assertThat(Thinned.of(nan, 0, 100 * STEP, 99 * STEP, 50).gaps())
                .containsExactly(new Gap(40 * STEP, 60 * STEP, 40, 60));
        Lane.TraceLine pause = line(new long[] {0, STEP, 50 * STEP, 51 * STEP}, new double[] {1, 2, 3, 4});
        Thinned thinned = Thinned.of(pause, 0, 100 * STEP, 52 * STEP, 50);
        assertThat(thinned.gaps()).containsExactly(new Gap(STEP, 50 * STEP, 2, 3));
        assertThat(thinned.value(2)).isNaN();
    }

    @Test
    void silenceUpToThePresentIsAGapThatIsStillOpen() {
        Thinned thinned = Thinned.of(steady(10, i -> i), 0, 100 * STEP, 60 * STEP, 50);
        assertThat(thinned.gaps()).hasSize(1);
        Gap gap = thinned.gaps().get(0);
        assertThat(gap.fromNanos()).isEqualTo(9 * STEP);
        assertThat(gap.toNanos()).isEqualTo(60 * STEP);
        assertThat(gap.after()).isNaN();
    }

    @Test
    void theLineRunsOnToBothEdges() {
        Thinned thinned = Thinned.of(steady(1000, i -> i), 500 * STEP + 1, 600 * STEP - 1, 600 * STEP, 2000);
        assertThat(thinned.seconds(0)).isNegative();
        assertThat(thinned.value(0)).isEqualTo(500);
        assertThat(thinned.value(thinned.size() - 1)).isEqualTo(600);
    }

    @Test
    void aTraceWithoutAnyNumberDrawsNothing() {
        assertThat(Thinned.of(steady(20, i -> Double.NaN), 0, 20 * STEP, 20 * STEP, 50)
                        .size())
                .isZero();
        assertThat(Thinned.of(steady(0, i -> 0), 0, 20 * STEP, 20 * STEP, 50).size())
                .isZero();
    }

    @Test
    void gapsSayHowLongTheyWere() {
        assertThat(new Gap(0, 38_000 * MS, 1, 1).words()).isEqualTo("gap 38 s");
        assertThat(new Gap(0, 120_000 * MS, 1, 1).words()).isEqualTo("gap 2 min");
        assertThat(new Gap(0, 125_000 * MS, 1, 1).words()).isEqualTo("gap 2 min 5 s");
        assertThat(new Gap(0, 300 * MS, 1, 1).words()).isEqualTo("gap");
    }
}
