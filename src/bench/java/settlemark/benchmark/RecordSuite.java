package settlemark.benchmark;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import settlemark.app.TwoHourJob;

/**
 * A job of two hours on the rig: how long its record takes and how long its seal takes to check, each the first time in a
 * fresh Java machine, as a person meets it, and again. Fails where the first record takes longer than 3 s or the first
 * check longer than 1 s.
 *
 * <p>{@code --no-limit} prints and never fails.
 */
final class RecordSuite implements BenchmarkMain.Suite {
    private static final int ROUNDS = 5;
    private static final double MOST_RECORD_SECONDS = 3;
    private static final double MOST_VERIFY_SECONDS = 1;

    @Override
    public void run(List<String> arguments) throws Exception {
        Path folder = Folders.make();
        Path workspace = folder.resolve("w.settlemark");
        TwoHourJob.store(workspace);
        double[] record = new double[ROUNDS];
        double[] verify = new double[ROUNDS];
        System.out.printf(Locale.ROOT, "%5s %10s %10s%n", "round", "record s", "verify s");
        for (int i = 0; i < ROUNDS; i++) {
            Path records = folder.resolve("records-" + i);
            long start = System.nanoTime();
            TwoHourJob.record(workspace, records);
            record[i] = (System.nanoTime() - start) / 1e9;
            start = System.nanoTime();
            TwoHourJob.verify(workspace, records);
            verify[i] = (System.nanoTime() - start) / 1e9;
            System.out.printf(Locale.ROOT, "%5d %10.2f %10.2f%n", i + 1, record[i], verify[i]);
        }
        Folders.delete(folder);
        System.out.printf(
                Locale.ROOT,
                "result record_first_s=%.2f record_again_s=%.2f verify_first_s=%.2f verify_again_s=%.2f%n",
                record[0],
                median(record),
                verify[0],
                median(verify));
        if (!arguments.contains("--no-limit") && (record[0] > MOST_RECORD_SECONDS || verify[0] > MOST_VERIFY_SECONDS)) {
            throw new IllegalStateException("the record must take at most " + MOST_RECORD_SECONDS
                    + " s and its check at most " + MOST_VERIFY_SECONDS + " s");
        }
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
