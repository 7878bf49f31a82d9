package settlemark.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ThinnedTest {
    private static final long MS = 1_000_000L;
    private static final long STEP = 100 * MS;

    private static Lane.TraceLine line(long[] times, double[] values) {
        return new Lane.TraceLine("", "", LineStyle.UPSTREAM, times, values, 3 * STEP);
    }

    private static Lane.TraceLine steady(int count, java.util.function.IntToDoubleFunction value) {
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
    void everyColumnKeepsItsFirstLeastGreatestAndLast() {
        long seed = 42;
        System.out.println("seed " + seed);
        Random random = new Random(seed);
        int count = 20_000;
        int columns = 300;
        Lane.TraceLine trace = steady(count, i -> random.nextGaussian());
        Thinned thinned = Thinned.of(trace, 0, count * STEP, count * STEP, columns);
        Map<Integer, double[]> all = new HashMap<>();
        Map<Integer, double[]> kept = new HashMap<>();
        for (int i = 0; i < count; i++) {
            gather(all, i * STEP / 1e9, trace.values()[i], count * STEP / 1e9 / columns);
        }
        for (int i = 0; i < thinned.size(); i++) {
            gather(kept, thinned.seconds(i), thinned.value(i), count * STEP / 1e9 / columns);
        }
        assertThat(kept.keySet()).isEqualTo(all.keySet());
        all.forEach((column, four) ->
                assertThat(kept.get(column)).as("column %d", column).containsExactly(four));
        assertThat(thinned.size()).isLessThanOrEqualTo(4 * columns);
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
