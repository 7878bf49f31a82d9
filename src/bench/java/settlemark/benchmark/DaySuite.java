package settlemark.benchmark;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import settlemark.profile.Profile;
import settlemark.session.WriteBatch;
import settlemark.store.SqliteStore;
import settlemark.store.WorkspacePlace;

/**
 * A day of two probes of eight channels, ten samples a second each, with the bytes of every frame, committed once a second
 * but as fast as it goes. Fails where the heap grows, the log is not bounded, or the file is not what the first hours
 * foretell.
 *
 * <p>{@code --hours N} (24), at least 6.
 */
final class DaySuite implements BenchmarkMain.Suite {
    private static final int PROBES = 2;
    private static final int RATE = 10;
    private static final int SECONDS_PER_HOUR = 3600;

    /** After so many hours it is foretold how the file grows. */
    private static final int FIRST_HOURS = 3;

    /** The heap is read so many times in the last part of each hour, so many commits apart. */
    private static final int HEAP_READINGS = 12;

    private static final int COMMITS_BETWEEN_READINGS = 47;

    private static final double HEAP_MAY_GROW_MEGABYTES = 2;
    private static final double MOST_LOG_MEGABYTES = 6;
    private static final double FORETOLD_WITHIN = 0.02;

    /**
     * @param heapMegabytes the least of several readings, each after a collection: what is not sealed yet comes and goes,
     *     and what stays is what could grow
     */
    private record Hour(double fileMegabytes, double heapMegabytes, double logMegabytes, double p99Millis) {}

    @Override
    public void run(List<String> arguments) throws Exception {
        int hours = (int) StoreSuite.number(arguments, "--hours", 24);
        if (hours < 2 * FIRST_HOURS) {
            throw new IllegalArgumentException("--hours must be at least " + 2 * FIRST_HOURS + ", got " + hours);
        }
        Path folder = Folders.make();
        Path file = folder.resolve("w.settlemark");
        Feed feed = new Feed(PROBES, RATE);
        Hour[] seen = new Hour[hours];
        System.out.printf(
                Locale.ROOT, "%4s %10s %10s %10s %12s%n", "hour", "file MB", "heap MB", "log MB", "commit p99");
        ExecutorService packer = Executors.newSingleThreadExecutor();
        try (SqliteStore store = SqliteStore.open(WorkspacePlace.chosen(file), DaySuite::no, packer)) {
            long session = store.begin(feed.header("day"));
            for (int hour = 0; hour < hours; hour++) {
                Hour now = hour(store, session, feed, file);
                seen[hour] = now;
                System.out.printf(
                        Locale.ROOT,
                        "%4d %10.3f %10.2f %10.2f %12.3f%n",
                        hour + 1,
                        now.fileMegabytes,
                        now.heapMegabytes,
                        now.logMegabytes,
                        now.p99Millis);
            }
            store.end(session, hours * SECONDS_PER_HOUR * 1_000_000_000L);
        } finally {
            packer.shutdown();
        }
        judge(seen, feed, Files.size(file));
        Folders.delete(folder);
    }

    private static Profile no(String text) {
        throw new IllegalArgumentException("not needed");
    }

    private static Hour hour(SqliteStore store, long session, Feed feed, Path file) throws Exception {
        Path log = file.resolveSibling(file.getFileName() + "-wal");
        double[] millis = new double[SECONDS_PER_HOUR];
        long mostLog = 0;
        double leastHeap = Double.POSITIVE_INFINITY;
        for (int i = 0; i < millis.length; i++) {
            WriteBatch batch = feed.next();
            long start = System.nanoTime();
            store.append(session, batch);
            millis[i] = (System.nanoTime() - start) / 1e6;
            mostLog = Math.max(mostLog, Files.size(log));
            int left = millis.length - 1 - i;
            if (left % COMMITS_BETWEEN_READINGS == 0 && left / COMMITS_BETWEEN_READINGS < HEAP_READINGS) {
                leastHeap = Math.min(leastHeap, StoreSuite.heapMegabytes());
            }
        }
        return new Hour(Files.size(file) / 1048576.0, leastHeap, mostLog / 1048576.0, Folders.quantile(millis, 0.99));
    }

    private static void judge(Hour[] seen, Feed feed, long bytes) {
        Hour first = seen[FIRST_HOURS - 1];
        Hour last = seen[seen.length - 1];
        // What the hours after the first added, because an empty workspace has a size too.
        double hourly = (first.fileMegabytes - seen[0].fileMegabytes) / (FIRST_HOURS - 1);
        double foretold = first.fileMegabytes + hourly * (seen.length - FIRST_HOURS);
        double off = last.fileMegabytes / foretold - 1;
        double log = 0;
        for (Hour hour : seen) {
            log = Math.max(log, hour.logMegabytes);
        }
        double samples = (double) seen.length * SECONDS_PER_HOUR * feed.samplesPerSecond();
        System.out.printf(
                Locale.ROOT,
                "result day_samples=%.0f day_bytes_per_sample=%.3f day_file_off_percent=%.2f day_heap_growth_mb=%.2f"
                        + " day_log_mb=%.2f%n",
                samples,
                bytes / samples,
                100 * off,
                last.heapMegabytes - first.heapMegabytes,
                log);
        if (Math.abs(off) > FORETOLD_WITHIN
                || last.heapMegabytes - first.heapMegabytes > HEAP_MAY_GROW_MEGABYTES
                || log > MOST_LOG_MEGABYTES) {
            throw new IllegalStateException("the file may be off by " + FORETOLD_WITHIN + ", the heap grow by "
                    + HEAP_MAY_GROW_MEGABYTES + " MB and the log be of " + MOST_LOG_MEGABYTES + " MB");
        }
    }
}
