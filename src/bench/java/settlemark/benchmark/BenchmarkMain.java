package settlemark.benchmark;

import java.util.Map;
import java.util.TreeMap;

/**
 * Runs the benchmark that its argument names: {@code mvn -q -Pbench test-compile exec:java -Dexec.args=decode}. Ends
 * with 1 where a benchmark fails, and 2 where there is none of that name.
 */
public final class BenchmarkMain {
    private static final Map<String, Suite> SUITES = new TreeMap<>(Map.of("decode", new DecodeSuite()));

    /** A few benchmarks that belong together; prints its table, and its figures as the last line. */
    interface Suite {
        void run() throws Exception;
    }

    private BenchmarkMain() {}

    public static void main(String[] arguments) {
        Suite suite = arguments.length == 1 ? SUITES.get(arguments[0]) : null;
        if (suite == null) {
            System.err.println("name one benchmark with -Dexec.args=NAME: " + String.join(", ", SUITES.keySet())
                    + "; got \"" + String.join(" ", arguments) + "\"");
            System.exit(2);
            return;
        }
        try {
            suite.run();
        } catch (Exception e) {
            e.printStackTrace();
            System.exit(1);
        }
    }
}
