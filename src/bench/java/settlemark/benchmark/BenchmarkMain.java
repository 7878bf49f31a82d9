package settlemark.benchmark;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Runs the benchmark that its argument names: {@code mvn -q -Pbench test-compile exec:java -Dexec.args=decode}. Ends
 * with 1 where a benchmark fails, and 2 where there is none of that name.
 */
public final class BenchmarkMain {
    private static final Map<String, Suite> SUITES = new TreeMap<>(Map.of(
            "decode",
            new DecodeSuite(),
            "settle",
            new SettleSuite(),
            "store",
            new StoreSuite(),
            "live",
            new LiveSuite(),
            "day",
            new DaySuite(),
            "record",
            new RecordSuite(),
            "chart",
            new ChartSuite(),
            "bench-strip",
            new BenchStripSuite(),
            "window",
            new WindowSuite()));

    /** A few benchmarks that belong together; prints its table, and its figures as the last line. */
    interface Suite {
        /** @param arguments what follows the name */
        void run(List<String> arguments) throws Exception;
    }

    private BenchmarkMain() {}

    public static void main(String[] arguments) {
        Suite suite = arguments.length > 0 ? SUITES.get(arguments[0]) : null;
        if (suite == null) {
            System.err.println("name one benchmark with -Dexec.args=NAME: " + String.join(", ", SUITES.keySet())
                    + "; got \"" + String.join(" ", arguments) + "\"");
            System.exit(2);
            return;
        }
        try {
            suite.run(List.of(arguments).subList(1, arguments.length));
        } catch (Exception e) {
            e.printStackTrace();
            System.exit(1);
        }
        System.out.flush();
        // Maven would end its output with an escape code, after the line that must be the last.
        Runtime.getRuntime().halt(0);
    }
}
