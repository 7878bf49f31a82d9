package settlemark.benchmark;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.stream.IntStream;
import settlemark.profile.Profile;
import settlemark.session.Overview;
import settlemark.session.SessionStore;
import settlemark.session.Span;
import settlemark.session.StoreException;
import settlemark.session.WriteBatch;
import settlemark.store.SqliteStore;
import settlemark.store.WorkspacePlace;

/**
 * What a bench under way costs: eight probes of eight channels, a hundred samples a second each, with the bytes of every
 * frame, committed once a second in real time; at first alone, and then while another thread asks ten times a second what
 * a window asks. What it measures of the process holds all that goes on in it; the data was made before.
 *
 * <p>{@code --seconds N} of each part (120).
 */
final class LiveSuite implements BenchmarkMain.Suite {
    private static final int PROBES = 8;
    private static final int RATE = 100;
    private static final int WARM_UP_SECONDS = 90;
    private static final long SECOND_NANOS = 1_000_000_000L;
    private static final long WINDOW_NANOS = 60 * SECOND_NANOS;
    private static final long ASK_EVERY_NANOS = SECOND_NANOS / 10;
    private static final int COLUMNS = 1200;
    private static final List<Integer> CHANNELS =
            IntStream.range(0, Feed.CHANNELS).boxed().toList();

    private volatile boolean asking;
    private volatile long storedNanos;

    private record Written(double[] commitMillis, double coreShare, double bytesPerSample) {}

    @Override
    public void run(List<String> arguments) throws Exception {
        int seconds = (int) StoreSuite.number(arguments, "--seconds", 120);
        Feed feed = new Feed(PROBES, RATE);
        List<WriteBatch> batches = new ArrayList<>();
        for (int i = 0; i < WARM_UP_SECONDS + 2 * seconds; i++) {
            batches.add(feed.next());
        }
        Path folder = Folders.make();
        ExecutorService packer = Executors.newSingleThreadExecutor();
        try (SqliteStore store =
                SqliteStore.open(WorkspacePlace.chosen(folder.resolve("w.settlemark")), LiveSuite::no, packer)) {
            long session = store.begin(feed.header("live"));
            for (WriteBatch batch : batches.subList(0, WARM_UP_SECONDS)) {
                commit(store, session, batch);
            }
            List<WriteBatch> rest = batches.subList(WARM_UP_SECONDS, batches.size());
            Written alone = write(store, session, rest.subList(0, seconds), feed);
            List<Double> whileWriting = new ArrayList<>();
            Thread reader = new Thread(() -> ask(store, session, whileWriting), "bench-reader");
            asking = true;
            reader.start();
            Written watched = write(store, session, rest.subList(seconds, rest.size()), feed);
            asking = false;
            reader.join();
            List<Double> still = new ArrayList<>();
            for (int i = 0; i < whileWriting.size(); i++) {
                still.add(question(store, session));
            }
            print(alone, watched, whileWriting, still);
        } finally {
            packer.shutdown();
            Folders.delete(folder);
        }
    }

    private static Profile no(String text) {
        throw new IllegalArgumentException("not needed");
    }

    private double commit(SessionStore store, long session, WriteBatch batch) throws StoreException {
        long start = System.nanoTime();
        store.append(session, batch);
        storedNanos = batch.untilNanos();
        return (System.nanoTime() - start) / 1e6;
    }

    private Written write(SessionStore store, long session, List<WriteBatch> batches, Feed feed) throws Exception {
        OperatingSystemMXBean system = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
        double[] millis = new double[batches.size()];
        long cpu = system.getProcessCpuTime();
        long bytes = writtenBytes();
        long start = System.nanoTime();
        for (int i = 0; i < millis.length; i++) {
            millis[i] = commit(store, session, batches.get(i));
            long left = start + (i + 1) * SECOND_NANOS - System.nanoTime();
            if (left > 0) {
                Thread.sleep(left / 1_000_000, (int) (left % 1_000_000));
            }
        }
        double share = (double) (system.getProcessCpuTime() - cpu) / (System.nanoTime() - start);
        double samples = (double) millis.length * feed.samplesPerSecond();
        return new Written(millis, share, (writtenBytes() - bytes) / samples);
    }

    /** What this process has had written to a disk, by the kernel's account. */
    private static long writtenBytes() throws Exception {
        for (String line : Files.readAllLines(Path.of("/proc/self/io"))) {
            if (line.startsWith("write_bytes: ")) {
                return Long.parseLong(line.substring("write_bytes: ".length()).strip());
            }
        }
        throw new IllegalStateException("/proc/self/io says nothing of write_bytes");
    }

    private void ask(SessionStore store, long session, List<Double> millis) {
        long next = System.nanoTime();
        try {
            while (asking) {
                millis.add(question(store, session));
                next += ASK_EVERY_NANOS;
                Thread.sleep(Math.max(0, (next - System.nanoTime()) / 1_000_000));
            }
        } catch (StoreException | InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    /** What a window with the last minute of a probe's channels and the whole session above it asks each time. */
    private double question(SessionStore store, long session) throws StoreException {
        long now = storedNanos;
        long start = System.nanoTime();
        Span minute = new Span(Math.max(0, now - WINDOW_NANOS), now);
        store.overview(session, 0, CHANNELS, minute, COLUMNS, Overview.Edges.EXACT);
        store.overview(session, 1, CHANNELS, new Span(0, now), COLUMNS, Overview.Edges.ALIGNED);
        long last = store.last(session, 0, 0).timesNanos()[0];
        if (last < now - 2 * SECOND_NANOS) {
            throw new IllegalStateException("the last sample is of " + last + " ns, and " + now + " ns are stored");
        }
        return (System.nanoTime() - start) / 1e6;
    }

    private static void print(Written alone, Written watched, List<Double> whileWriting, List<Double> still) {
        System.out.printf(
                Locale.ROOT,
                "%-24s %8s %8s %8s %10s%n",
                "64 channels x 100 Hz",
                "p50 ms",
                "p99 ms",
                "max ms",
                "of a core");
        row("commits alone", alone.commitMillis, alone.coreShare);
        row("commits, with reader", watched.commitMillis, watched.coreShare);
        double[] beside = array(whileWriting);
        double[] undisturbed = array(still);
        row("reads while writing", beside, Double.NaN);
        row("reads alone", undisturbed, Double.NaN);
        System.out.printf(
                Locale.ROOT,
                "result live_core_percent=%.2f live_bytes_written_per_sample=%.2f commit_p99_ms=%.2f"
                        + " commit_p99_with_reader_ms=%.2f read_p99_ms=%.2f read_p99_while_writing_ms=%.2f%n",
                100 * alone.coreShare,
                alone.bytesPerSample,
                Folders.quantile(alone.commitMillis, 0.99),
                Folders.quantile(watched.commitMillis, 0.99),
                Folders.quantile(undisturbed, 0.99),
                Folders.quantile(beside, 0.99));
    }

    private static double[] array(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static void row(String name, double[] millis, double share) {
        System.out.printf(
                Locale.ROOT,
                "%-24s %8.2f %8.2f %8.2f %10s%n",
                name,
                Folders.quantile(millis, 0.5),
                Folders.quantile(millis, 0.99),
                Folders.quantile(millis, 1),
                Double.isNaN(share) ? "" : String.format(Locale.ROOT, "%.2f %%", 100 * share));
    }
}
