package settlemark.benchmark;

import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import settlemark.settle.SettleDetector;
import settlemark.settle.SettleKind;
import settlemark.settle.SettleSettings;

/** Time for one sample of one channel; an operation is a sample. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
public class SettleBenchmark {
    /** Ten minutes at ten samples a second, over and over. */
    static final int SAMPLES = 6000;

    private static final double PERIOD_SECONDS = 0.1;
    private static final double FAST_PERIOD_SECONDS = 0.01;
    private static final int WINDOW_SAMPLES = 200;

    /** What a channel does in ten minutes: rest, an approach, rest, swings within the band, rest. */
    static double[] tenMinutes(SettleKind kind) {
        SettleSettings settings = SettleSettings.defaults(kind);
        double limit = settings.driftLimit();
        double tau = kind == SettleKind.GAS ? 1.5 : 45;
        double size = kind == SettleKind.GAS ? 0.3 : 60 * limit;
        double step = kind == SettleKind.AIR ? limit / 5 : limit / 2;
        Random random = new Random(kind.ordinal());
        double[] values = new double[SAMPLES];
        for (int i = 0; i < SAMPLES; i++) {
            double t = i * PERIOD_SECONDS;
            double value = 100 * limit + random.nextGaussian() * limit / 5;
            if (t > 60) {
                value += size * -Math.expm1(-(t - 60) / tau);
            }
            if (t > 420 && t < 540) {
                value += settings.band() / 2 * Math.sin(t);
            }
            values[i] = Math.rint(value / step) * step;
        }
        return values;
    }

    /** Samples of one channel without end, and its detector. */
    abstract static class Feed {
        final double[] values;
        final double periodSeconds;
        final SettleDetector detector;
        private long next;

        Feed(SettleKind kind, double[] values, double periodSeconds) {
            this.values = values;
            this.periodSeconds = periodSeconds;
            detector = new SettleDetector(SettleSettings.defaults(kind), Double.NaN);
        }

        long run() {
            for (double value : values) {
                detector.accept(next * periodSeconds, value);
                next++;
            }
            return detector.ignoredSamples();
        }
    }

    /** Gas pressure. */
    @State(Scope.Thread)
    public static class Gas extends Feed {
        public Gas() {
            super(SettleKind.GAS, tenMinutes(SettleKind.GAS), PERIOD_SECONDS);
        }
    }

    /** Gas pressure, a hundred samples a second. */
    @State(Scope.Thread)
    public static class FastGas extends Feed {
        public FastGas() {
            super(SettleKind.GAS, tenMinutes(SettleKind.GAS), FAST_PERIOD_SECONDS);
        }
    }

    /** Air temperature. */
    @State(Scope.Thread)
    public static class Air extends Feed {
        public Air() {
            super(SettleKind.AIR, tenMinutes(SettleKind.AIR), PERIOD_SECONDS);
        }
    }

    /** Stack temperature. */
    @State(Scope.Thread)
    public static class Stack extends Feed {
        public Stack() {
            super(SettleKind.STACK, tenMinutes(SettleKind.STACK), PERIOD_SECONDS);
        }
    }

    /** The dearest: gas that is too noisy to settle, so that every window is looked at for ever. */
    @State(Scope.Thread)
    public static class NeverSettled extends Feed {
        public NeverSettled() {
            super(SettleKind.GAS, new Random(9).doubles(SAMPLES, 3.3, 3.7).toArray(), PERIOD_SECONDS);
        }
    }

    /** A line through the last 20 s by commons-math, asked for its slope and the slope's interval once a second. */
    @State(Scope.Thread)
    public static class Regression {
        final double[] values = tenMinutes(SettleKind.GAS);
        final SimpleRegression line = new SimpleRegression();
        long next;
    }

    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public long gas(Gas feed) {
        return feed.run();
    }

    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public long gasAt100Hz(FastGas feed) {
        return feed.run();
    }

    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public long air(Air feed) {
        return feed.run();
    }

    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public long stack(Stack feed) {
        return feed.run();
    }

    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public long gasNever(NeverSettled feed) {
        return feed.run();
    }

    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public double regression(Regression state) {
        double asked = 0;
        double[] values = state.values;
        for (int i = 0; i < values.length; i++) {
            state.line.addData(state.next * PERIOD_SECONDS, values[i]);
            if (state.line.getN() > WINDOW_SAMPLES) {
                int oldest = Math.floorMod(i - WINDOW_SAMPLES, values.length);
                state.line.removeData((state.next - WINDOW_SAMPLES) * PERIOD_SECONDS, values[oldest]);
            }
            if (i % 10 == 9) {
                asked += state.line.getSlope() + 1.65 * state.line.getSlopeStdErr();
            }
            state.next++;
        }
        return asked;
    }
}
