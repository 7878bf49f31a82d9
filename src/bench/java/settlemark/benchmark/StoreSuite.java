package settlemark.benchmark;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import settlemark.session.Overview;

/**
 * How a workspace stores and gives back samples beside what else could be taken, each in both of its layouts where it has
 * two. Every contender is made anew in each round, and rounds are alternated; the figures are medians. Before anything
 * counts, all must give the same overview.
 *
 * <p>{@code --samples N} of all channels together (10,000,000), {@code --rounds N} (3); {@code --large} measures a
 * hundred million in the program's own store alone, and what reading them takes in a Java machine with 64 MB for its heap.
 */
final class StoreSuite implements BenchmarkMain.Suite {
    static final int COLUMNS = 1500;
    static final long MINUTE_NANOS = 60_000_000_000L;
    private static final String OURS = "settlemark";
    private static final String OURS_EXACT = "settlemark, exact edges";
    private static final String OURS_OWN = "settlemark, times of each channel";
    private static final String ROWS_LONG = "SQLite rows, long";
    private static final String ROWS_WIDE = "SQLite rows, wide";
    private static final String DUCK_LONG = "DuckDB, long";
    private static final String DUCK_WIDE = "DuckDB, wide";

    private record Figures(
            double samplesPerSecond,
            double bytesPerSample,
            double openMillis,
            double overviewMillis,
            double windowMillis) {}

    private final Map<String, List<Figures>> measured = new LinkedHashMap<>();
    private double @Nullable [][][] agreed;
    private List<Double> largeReader = List.of();

    @Override
    public void run(List<String> arguments) throws Exception {
        boolean large = arguments.contains("--large");
        long samples = number(arguments, "--samples", large ? 100_000_000 : 10_000_000);
        int rounds = (int) number(arguments, "--rounds", large ? 1 : 3);
        long commits = Math.max(1, samples / (Scans.PER_COMMIT * Scans.CHANNELS));
        System.err.println("storing " + commits + " commits of " + Scans.PER_COMMIT * Scans.CHANNELS + " samples, "
                + rounds + " rounds");
        for (int round = 0; round < rounds; round++) {
            for (Contender contender : contenders(large)) {
                measure(contender, commits, large);
            }
        }
        print();
        if (large) {
            System.out.printf(
                    Locale.ROOT,
                    "result large_open_ms=%.2f large_overview_ms=%.2f large_overview_exact_ms=%.2f large_window_ms=%.3f"
                            + " large_reader_heap_mb=%.1f large_bytes_per_sample=%.3f%n",
                    largeReader.get(0),
                    largeReader.get(1),
                    largeReader.get(2),
                    largeReader.get(3),
                    largeReader.get(4),
                    median(OURS).bytesPerSample);
        } else {
            result();
        }
    }

    static long number(List<String> arguments, String name, long standard) {
        int at = arguments.indexOf(name);
        return at < 0 ? standard : Long.parseLong(arguments.get(at + 1));
    }

    private static List<Contender> contenders(boolean large) {
        Contender ours = new OurStore(OURS, Overview.Edges.ALIGNED);
        if (large) {
            return List.of(ours);
        }
        return List.of(
                new Rows(ROWS_LONG, false, false),
                new OurStore(OURS_EXACT, Overview.Edges.EXACT),
                new Rows(DUCK_LONG, true, false),
                ours,
                new Rows(ROWS_WIDE, false, true),
                new TsFileStore(),
                new Rows(DUCK_WIDE, true, true),
                new OurStore(OURS_OWN, Overview.Edges.ALIGNED));
    }

    private void measure(Contender contender, long commits, boolean large) throws Exception {
        Path folder = Folders.make();
        try {
            Scans scans = new Scans(!contender.name().equals(OURS_OWN));
            contender.create(folder);
            long nanos = 0;
            for (long i = 0; i < commits; i++) {
                scans.next();
                long start = System.nanoTime();
                contender.commit(scans);
                nanos += System.nanoTime() - start;
            }
            long start = System.nanoTime();
            contender.finish();
            nanos += System.nanoTime() - start;
            double samples = (double) commits * Scans.PER_COMMIT * Scans.CHANNELS;
            Figures figures = read(contender, folder, commits, samples / (nanos / 1e9), Folders.size(folder) / samples);
            measured.computeIfAbsent(contender.name(), n -> new ArrayList<>()).add(figures);
            System.err.printf(Locale.ROOT, "%-36s %s%n", contender.name(), figures);
            if (large) {
                largeReader = LargeReader.run(folder, end(commits));
            }
        } finally {
            Folders.delete(folder);
        }
    }

    private static long end(long commits) {
        return commits * Scans.PER_COMMIT * Scans.PERIOD_NANOS + Scans.PERIOD_NANOS;
    }

    private Figures read(Contender contender, Path folder, long commits, double perSecond, double bytes)
            throws Exception {
        long end = end(commits);
        long start = System.nanoTime();
        contender.open(folder);
        double open = (System.nanoTime() - start) / 1e6;
        check(contender, contender.overview(end, COLUMNS));
        double[] overviews = new double[5];
        for (int i = 0; i < overviews.length; i++) {
            start = System.nanoTime();
            contender.overview(end, COLUMNS);
            overviews[i] = (System.nanoTime() - start) / 1e6;
        }
        double[] windows = new double[21];
        for (int i = 0; i < windows.length; i++) {
            long from = Math.max(0, end / 23 * (i + 1) - MINUTE_NANOS);
            start = System.nanoTime();
            long found = contender.window(from, from + MINUTE_NANOS - 1);
            windows[i] = (System.nanoTime() - start) / 1e6;
            if (Math.abs(found - 600 * Scans.CHANNELS) > 2 * Scans.CHANNELS) {
                throw new IllegalStateException(contender.name() + " found " + found + " samples in a minute");
            }
        }
        contender.close();
        return new Figures(perSecond, bytes, open, median(overviews), median(windows));
    }

    /** Exact columns must be the same with all; aligned ones may be off at their edges but not in whole. */
    private void check(Contender contender, double[][][] overview) {
        boolean exact = !contender.name().equals(OURS) && !contender.name().equals(OURS_OWN);
        if (!exact) {
            return;
        }
        if (agreed == null) {
            agreed = overview;
        }
        if (!Arrays.deepEquals(agreed, overview)) {
            throw new IllegalStateException(contender.name() + " gives another overview than the one before it");
        }
    }

    private static double median(double... values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    private Figures median(String name) {
        List<Figures> rounds = measured.getOrDefault(name, List.of());
        return new Figures(
                median(rounds, Figures::samplesPerSecond),
                median(rounds, Figures::bytesPerSample),
                median(rounds, Figures::openMillis),
                median(rounds, Figures::overviewMillis),
                median(rounds, Figures::windowMillis));
    }

    private static double median(List<Figures> rounds, ToDoubleFunction<Figures> figure) {
        return median(rounds.stream().mapToDouble(figure).toArray());
    }

    private void print() {
        System.out.printf(
                Locale.ROOT,
                "%-36s %12s %9s %9s %12s %11s%n",
                "store",
                "samples/s",
                "B/sample",
                "open ms",
                "overview ms",
                "minute ms");
        for (String name : measured.keySet()) {
            Figures f = median(name);
            System.out.printf(
                    Locale.ROOT,
                    "%-36s %12.0f %9.3f %9.2f %12.2f %11.3f%n",
                    name,
                    f.samplesPerSecond,
                    f.bytesPerSample,
                    f.openMillis,
                    f.overviewMillis,
                    f.windowMillis);
        }
    }

    /** Each peer by its better layout, figure by figure. */
    private void result() {
        Figures ours = median(OURS);
        double rows = Math.max(median(ROWS_LONG).samplesPerSecond, median(ROWS_WIDE).samplesPerSecond);
        double duck = Math.max(median(DUCK_LONG).samplesPerSecond, median(DUCK_WIDE).samplesPerSecond);
        double duckBytes = Math.min(median(DUCK_LONG).bytesPerSample, median(DUCK_WIDE).bytesPerSample);
        System.out.printf(
                Locale.ROOT,
                "result ingest_vs_rows=%.2f ingest_vs_duckdb=%.2f bytes_per_sample_shared=%.3f"
                        + " bytes_per_sample_own=%.3f size_vs_duckdb=%.2f overview_ms=%.2f overview_exact_ms=%.2f"
                        + " window_ms=%.3f%n",
                ours.samplesPerSecond / rows,
                ours.samplesPerSecond / duck,
                ours.bytesPerSample,
                median(OURS_OWN).bytesPerSample,
                duckBytes / ours.bytesPerSample,
                ours.overviewMillis,
                median(OURS_EXACT).overviewMillis,
                ours.windowMillis);
    }

    static double heapMegabytes() {
        System.gc();
        Runtime runtime = Runtime.getRuntime();
        return (runtime.totalMemory() - runtime.freeMemory()) / 1048576.0;
    }
}
