package settlemark.benchmark;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.Locale;
import java.util.stream.DoubleStream;
import org.openjdk.jmh.runner.RunnerException;
import settlemark.settle.SettleDetector;
import settlemark.settle.SettleKind;
import settlemark.settle.SettleSettings;

/** What a sample costs the detector, beside a moving regression that decides nothing. */
final class SettleSuite implements BenchmarkMain.Suite {
    private static final double MOST_STATE_BYTES = 16 * 1024;
    private static final int CHANNELS = 64;
    private static final int FAST_PER_SECOND = 100;

    @Override
    public void run(List<String> arguments) throws RunnerException {
        if (!arguments.isEmpty()) {
            throw new IllegalArgumentException("settle takes no arguments, got " + arguments);
        }
        for (SettleKind kind : SettleKind.values()) {
            checkThatItDecides(kind);
        }
        Measured measured = Measured.run(SettleBenchmark.class);
        measured.print("sample");
        for (SettleKind kind : SettleKind.values()) {
            System.out.printf(Locale.ROOT, "state of a channel, %-5s %8.0f bytes%n", kind, stateBytes(kind));
        }
        for (SettleKind kind : SettleKind.values()) {
            System.out.println(Allocated.of(kind).words(kind));
        }
        double share = measured.nanos("gasAt100Hz") * CHANNELS * FAST_PER_SECOND / 1e9;
        System.out.printf(
                Locale.ROOT,
                "%d channels at %d/s: %.2f %% of a core%ngas beside a moving regression: %.2f times its time%n",
                CHANNELS,
                FAST_PER_SECOND,
                100 * share,
                measured.nanos("gas") / measured.nanos("regression"));
        System.out.printf(
                Locale.ROOT,
                "result ns_per_sample=%.1f bytes_per_sample_allocated=%.2f%n",
                DoubleStream.of(measured.nanos("gas"), measured.nanos("air"), measured.nanos("stack"))
                        .max()
                        .orElseThrow(),
                DoubleStream.of(
                                measured.allocatedBytes("gas"),
                                measured.allocatedBytes("air"),
                                measured.allocatedBytes("stack"))
                        .max()
                        .orElseThrow());
    }

    /** A detector that never settles on these samples would be measured for nothing. */
    private static void checkThatItDecides(SettleKind kind) {
        int[] settled = new int[1];
        SettleDetector detector = new SettleDetector(
                SettleSettings.defaults(kind), Double.NaN, event -> settled[0] += event.settled() ? 1 : 0);
        double[] values = SettleBenchmark.tenMinutes(kind);
        for (int i = 0; i < values.length; i++) {
            detector.accept(i * 0.1, values[i]);
        }
        if (settled[0] < 2) {
            throw new IllegalStateException(
                    kind + " settled " + settled[0] + " times in ten minutes, expected 2 or more");
        }
    }

    /** What is created for samples that tell of nothing, and for those that tell of a change of mind. */
    private record Allocated(long samples, long quietBytes, long events, long eventBytes) {
        private static final int WARM_UP = 40;
        private static final int COUNTED = 20;

        static Allocated of(SettleKind kind) {
            ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
            int[] told = new int[1];
            SettleDetector detector = new SettleDetector(SettleSettings.defaults(kind), Double.NaN, event -> told[0]++);
            double[] values = SettleBenchmark.tenMinutes(kind);
            long quiet = 0;
            long loud = 0;
            int events = 0;
            for (int round = 0; round < WARM_UP + COUNTED; round++) {
                boolean counts = round >= WARM_UP;
                for (int i = 0; i < values.length; i++) {
                    double seconds = (round * (double) values.length + i) * 0.1;
                    int before = told[0];
                    long bytes = threads.getCurrentThreadAllocatedBytes();
                    detector.accept(seconds, values[i]);
                    bytes = threads.getCurrentThreadAllocatedBytes() - bytes;
                    boolean event = told[0] > before;
                    events += counts && event ? told[0] - before : 0;
                    loud += counts && event ? bytes : 0;
                    quiet += counts && !event ? bytes : 0;
                }
            }
            if (quiet != 0) {
                throw new IllegalStateException(
                        kind + " created " + quiet + " bytes for samples without an event, expected none");
            }
            return new Allocated((long) COUNTED * values.length, quiet, events, loud);
        }

        String words(SettleKind kind) {
            return String.format(
                    Locale.ROOT,
                    "created, %-5s %d samples: %d bytes without an event, %d events of %.0f bytes, %.2f bytes a sample",
                    kind,
                    samples,
                    quietBytes,
                    events,
                    eventBytes / (double) Math.max(1, events),
                    (quietBytes + eventBytes) / (double) samples);
        }
    }

    private static double stateBytes(SettleKind kind) {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        SettleSettings settings = SettleSettings.defaults(kind);
        SettleDetector[] kept = new SettleDetector[100];
        long before = threads.getCurrentThreadAllocatedBytes();
        for (int i = 0; i < kept.length; i++) {
            kept[i] = new SettleDetector(settings, Double.NaN);
        }
        double bytes = (threads.getCurrentThreadAllocatedBytes() - before) / (double) kept.length;
        if (!(bytes <= MOST_STATE_BYTES)) {
            throw new IllegalStateException(kind + " keeps " + bytes + " bytes, expected at most " + MOST_STATE_BYTES);
        }
        return bytes;
    }
}
