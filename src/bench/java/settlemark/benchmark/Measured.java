package settlemark.benchmark;

import java.net.URL;
import java.net.URLClassLoader;
import java.util.Arrays;
import java.util.Collection;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.openjdk.jmh.runner.options.VerboseMode;

/**
 * The results of one class of benchmarks, each measured alone in fresh Java machines.
 *
 * @param results by the benchmark's method, in nanoseconds an operation
 */
record Measured(Map<String, RunResult> results) {
    private static final int FORKS = 2;
    private static final int WARM_UPS = 4;
    private static final int MEASUREMENTS = 6;

    static Measured run(Class<?> benchmarks) throws RunnerException {
        giveForksTheClassPath();
        System.err.println("measuring " + benchmarks.getSimpleName() + ", " + FORKS + " times "
                + (WARM_UPS + MEASUREMENTS) + " s for each row");
        Collection<RunResult> runs = new Runner(new OptionsBuilder()
                        .include("\\Q" + benchmarks.getName() + "\\E\\..*")
                        .forks(FORKS)
                        .warmupIterations(WARM_UPS)
                        .warmupTime(TimeValue.seconds(1))
                        .measurementIterations(MEASUREMENTS)
                        .measurementTime(TimeValue.seconds(1))
                        .jvmArgs("-Xms512m", "-Xmx512m")
                        .addProfiler(GCProfiler.class)
                        .shouldFailOnError(true)
                        .verbosity(VerboseMode.SILENT)
                        .build())
                .run();
        Map<String, RunResult> results = new TreeMap<>();
        for (RunResult run : runs) {
            String name = run.getParams().getBenchmark();
            results.put(name.substring(name.lastIndexOf('.') + 1), run);
        }
        return new Measured(results);
    }

    /** Inside of Maven the class path is not where the forks look for it, and they would silently measure nothing. */
    private static void giveForksTheClassPath() {
        System.setProperty("java.class.path", classPath());
    }

    /** What a Java machine of its own needs to run what runs here. */
    static String classPath() {
        return Measured.class.getClassLoader() instanceof URLClassLoader loader
                ? Arrays.stream(loader.getURLs()).map(URL::getPath).collect(Collectors.joining(":"))
                : System.getProperty("java.class.path");
    }

    /** Time for an operation, in nanoseconds. */
    double nanos(String benchmark) {
        return result(benchmark).getPrimaryResult().getScore();
    }

    private RunResult result(String benchmark) {
        RunResult result = results.get(benchmark);
        if (result == null) {
            throw new IllegalStateException("nothing was measured for " + benchmark + ", only " + results.keySet());
        }
        return result;
    }

    /** Prints a row a benchmark; the error is half of the interval that holds the mean at 99.9 %. */
    void print(String operation) {
        System.out.printf(
                Locale.ROOT,
                "%-14s %-6s %14s %12s %10s %12s%n",
                "benchmark",
                "mode",
                operation + "s/s",
                "ns/" + operation,
                "error ns",
                "bytes/" + operation);
        for (String benchmark : results.keySet()) {
            Result<?> time = result(benchmark).getPrimaryResult();
            System.out.printf(
                    Locale.ROOT,
                    "%-14s %-6s %14.0f %12.2f %10.2f %12.3f%n",
                    benchmark,
                    result(benchmark).getParams().getMode().shortLabel(),
                    1e9 / time.getScore(),
                    time.getScore(),
                    time.getScoreError(),
                    allocatedBytes(benchmark));
        }
    }

    double allocatedBytes(String benchmark) {
        @Nullable Result<?> allocated = result(benchmark).getSecondaryResults().get("gc.alloc.rate.norm");
        if (allocated == null) {
            throw new IllegalStateException("the allocation of " + benchmark + " was not measured");
        }
        return allocated.getScore();
    }
}
