package settlemark.benchmark;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import settlemark.session.Overview;

/**
 * Reads a large workspace in a Java machine of its own whose heap is limited to what is allowed: arguments are the folder
 * and the time of its end. Its last line is the figures, separated by blanks: to open, aligned and exact overview, window
 * (ms), and the most heap that was in use (MB). Each is the median of what comes after the first ones, which a fresh
 * Java machine runs before it has compiled anything.
 */
final class LargeReader {
    static final int HEAP_MEGABYTES = 64;
    private static final int WARM_UPS = 20;
    private static final int TIMES = 11;

    private LargeReader() {}

    public static void main(String[] arguments) throws Exception {
        Path folder = Path.of(arguments[0]);
        long end = Long.parseLong(arguments[1]);
        double[] opened = new double[TIMES];
        double[] aligned = new double[TIMES];
        double[] exact = new double[TIMES];
        double[] window = new double[TIMES];
        for (int i = -WARM_UPS; i < TIMES; i++) {
            OurStore store = new OurStore("aligned", Overview.Edges.ALIGNED);
            double open = millis(() -> store.open(folder));
            double coarse = millis(() -> store.overview(end, StoreSuite.COLUMNS));
            double minute = millis(() -> store.window(end / 2, end / 2 + StoreSuite.MINUTE_NANOS - 1));
            store.close();
            if (i >= 0) {
                opened[i] = open;
                aligned[i] = coarse;
                window[i] = minute;
            }
        }
        OurStore store = new OurStore("exact", Overview.Edges.EXACT);
        store.open(folder);
        for (int i = 0; i < TIMES; i++) {
            exact[i] = millis(() -> store.overview(end, StoreSuite.COLUMNS));
        }
        store.close();
        System.out.printf(
                Locale.ROOT,
                "%.2f %.2f %.2f %.3f %.1f%n",
                median(opened),
                median(aligned),
                median(exact),
                median(window),
                mostHeap());
    }

    private static double median(double[] values) {
        return Folders.quantile(values, 0.5);
    }

    private interface Step {
        void run() throws Exception;
    }

    private static double millis(Step step) throws Exception {
        long start = System.nanoTime();
        step.run();
        return (System.nanoTime() - start) / 1e6;
    }

    /** The pools' own peaks together, so rather more than there was at any one time. */
    private static double mostHeap() {
        double bytes = 0;
        for (MemoryPoolMXBean pool : ManagementFactory.getMemoryPoolMXBeans()) {
            if (pool.getType() == MemoryType.HEAP) {
                bytes += pool.getPeakUsage().getUsed();
            }
        }
        return bytes / 1048576;
    }

    /** Runs it, and returns its figures. */
    static List<Double> run(Path folder, long endNanos) throws Exception {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx" + HEAP_MEGABYTES + "m",
                "-XX:+UseSerialGC",
                "-cp",
                Measured.classPath(),
                LargeReader.class.getName(),
                folder.toString(),
                Long.toString(endNanos)));
        Process process = new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        String[] lines = new String(process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8)
                .split("\n");
        if (process.waitFor() != 0) {
            throw new IllegalStateException("the reader of " + folder + " ended with " + process.exitValue());
        }
        List<Double> figures = new ArrayList<>();
        for (String figure : lines[lines.length - 1].split(" ")) {
            figures.add(Double.parseDouble(figure));
        }
        return figures;
    }
}
