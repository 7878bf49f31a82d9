package settlemark.benchmark;

import com.sun.management.OperatingSystemMXBean;
import java.awt.Color;
import java.awt.EventQueue;
import java.awt.GraphicsEnvironment;
import java.awt.GridLayout;
import java.awt.Toolkit;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.locks.LockSupport;
import javax.swing.JFrame;
import javax.swing.JPanel;
import javax.swing.RepaintManager;
import javax.swing.Timer;
import org.jfree.chart.ChartFactory;
import org.jfree.chart.ChartPanel;
import org.jfree.chart.JFreeChart;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import settlemark.app.BenchPipeline;
import settlemark.decode.Encoder;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.profile.Profile;
import settlemark.session.DemoHands;
import settlemark.session.SessionHeader;
import settlemark.ui.Desktop;
import settlemark.ui.DesktopOptions;
import settlemark.ui.DesktopStart;

/**
 * The window under way on a real display: 64 channels of a hundred samples a second as a bench strip, from the bytes over
 * decoding and the store to the screen, with the share of a core that all of it takes; the chart library's usual charts
 * with the same samples beside it; and how long a byte takes to its pixel, there and in the window of a job.
 *
 * <p>{@code --seconds N} of each part (30), {@code --warm N} before it (15), {@code --only strip|job|usual} for one part;
 * what was not measured is NaN.
 */
final class BenchStripSuite implements BenchmarkMain.Suite {
    private static final int PROBES = 8;
    private static final int RATE = 100;
    private static final Figures NONE = new Figures(Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);
    private static final int WIDTH = 1920;
    private static final int HEIGHT = 1040;
    private static final int MINUTE = 60;

    private final OperatingSystemMXBean system = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    private final Painting painting = new Painting();
    private int warmSeconds;

    /** When something was painted, and what it held. */
    private static final class Painting extends RepaintManager {
        private final List<long[]> frames = new ArrayList<>();
        private volatile Published published = () -> 0;
        private boolean dirty;

        interface Published {
            long nanos();
        }

        @Override
        public void addDirtyRegion(javax.swing.JComponent c, int x, int y, int w, int h) {
            dirty = true;
            super.addDirtyRegion(c, x, y, w, h);
        }

        @Override
        public void paintDirtyRegions() {
            boolean something = dirty;
            dirty = false;
            // What is painted was shown before: nothing that comes meanwhile is in it.
            long holds = published.nanos();
            super.paintDirtyRegions();
            if (something) {
                Toolkit.getDefaultToolkit().sync();
                synchronized (frames) {
                    frames.add(new long[] {System.nanoTime(), holds});
                }
            }
        }

        List<long[]> taken() {
            synchronized (frames) {
                List<long[]> all = List.copyOf(frames);
                frames.clear();
                return all;
            }
        }
    }

    /** A chunk's arrival: by the clock of the machine, and in session time. */
    private record Came(long atNanos, long sessionNanos) {}

    private record Figures(double framesASecond, double core, double p50Millis, double p99Millis, double worstMillis) {}

    @Override
    public void run(List<String> arguments) throws Exception {
        int seconds = (int) StoreSuite.number(arguments, "--seconds", 30);
        warmSeconds = (int) StoreSuite.number(arguments, "--warm", 15);
        List<String> parts = parts(arguments);
        if (GraphicsEnvironment.isHeadless()) {
            throw new IllegalStateException("this measures a window: run it on a display, such as by xvfb-run -a");
        }
        RepaintManager.setCurrentManager(painting);
        System.out.printf(
                Locale.ROOT, "%-34s %9s %9s %9s %9s %9s%n", "", "frames/s", "core %", "p50 ms", "p99 ms", "worst ms");
        Figures strip = parts.contains("strip") ? row("64 channels x 100 Hz, bench strip", strip(seconds)) : NONE;
        Figures job = parts.contains("job") ? row("4 channels x 10 Hz, job", job(seconds)) : NONE;
        Figures usual = parts.contains("usual") ? row("library's usual charts, 64 x 100 Hz", usual(seconds)) : NONE;
        System.out.printf(
                Locale.ROOT,
                "result bench_fps=%.1f bench_core_percent=%.1f usual_fps=%.1f usual_core_percent=%.1f"
                        + " bench_byte_to_pixel_p99_ms=%.0f job_fps=%.1f job_core_percent=%.1f"
                        + " job_byte_to_pixel_p99_ms=%.0f%n",
                strip.framesASecond,
                strip.core,
                usual.framesASecond,
                usual.core,
                strip.p99Millis,
                job.framesASecond,
                job.core,
                job.p99Millis);
    }

    private static List<String> parts(List<String> arguments) {
        List<String> all = List.of("strip", "job", "usual");
        int at = arguments.indexOf("--only");
        if (at < 0) {
            return all;
        }
        List<String> one = arguments.subList(at + 1, Math.min(at + 2, arguments.size()));
        if (!all.containsAll(one) || one.isEmpty()) {
            throw new IllegalArgumentException("--only takes one of " + all + ", got " + one);
        }
        return one;
    }

    private static Figures row(String name, Figures figures) {
        System.out.printf(
                Locale.ROOT,
                "%-34s %9.1f %9.1f %9.0f %9.0f %9.0f%n",
                name,
                figures.framesASecond,
                figures.core,
                figures.p50Millis,
                figures.p99Millis,
                figures.worstMillis);
        return figures;
    }

    private static DesktopOptions size() {
        return new DesktopOptions(false, Optional.empty(), WIDTH, HEIGHT);
    }

    private Figures strip(int seconds) throws Exception {
        Path folder = Folders.make();
        SessionHeader header = new Feed(PROBES, RATE).header("strip");
        DesktopStart window = DesktopStart.show(size(), "Bench");
        try (BenchPipeline pipeline = new BenchPipeline(header, folder.resolve("w.settlemark"))) {
            window.bench(pipeline::view, () -> {});
            return measured(pipeline, header, RATE, seconds);
        } finally {
            window.close();
            Folders.delete(folder);
        }
    }

    private Figures job(int seconds) throws Exception {
        Path folder = Folders.make();
        SessionHeader header = BenchPipeline.job();
        DesktopStart window = DesktopStart.show(size(), "Job");
        try (BenchPipeline pipeline = new BenchPipeline(header, folder.resolve("w.settlemark"))) {
            Optional<DemoHands> nobody = Optional.empty();
            Desktop desktop = window.open(pipeline.desk(), nobody, Optional.empty(), new NoProgram());
            pipeline.desk().act(new settlemark.job.Act.Confirm("plate"));
            pipeline.desk().act(new settlemark.job.Act.Confirm("probes"));
            Figures figures = measured(pipeline, header, 10, seconds);
            EventQueue.invokeAndWait(desktop::close);
            return figures;
        } finally {
            Folders.delete(folder);
        }
    }

    /** Feeds frames as they would arrive, and looks at what is painted. */
    private Figures measured(BenchPipeline pipeline, SessionHeader header, int rate, int seconds) throws Exception {
        painting.published = pipeline::publishedNanos;
        List<Came> came = new ArrayList<>();
        AtomicBoolean going = new AtomicBoolean(true);
        Thread feeding = new Thread(() -> feed(pipeline, header, rate, going, came), "bench-feed");
        feeding.start();
        park(warmSeconds);
        painting.taken();
        synchronized (came) {
            came.clear();
        }
        long cpu = system.getProcessCpuTime();
        long start = System.nanoTime();
        park(seconds);
        double core = 100.0 * (system.getProcessCpuTime() - cpu) / (System.nanoTime() - start);
        List<long[]> frames = painting.taken();
        double spent = (System.nanoTime() - start) / 1e9;
        List<Came> all;
        synchronized (came) {
            all = List.copyOf(came);
        }
        going.set(false);
        feeding.join();
        double[] millis = waits(all, frames);
        return new Figures(
                distinct(frames) / spent,
                core,
                Folders.quantile(millis, 0.5),
                Folders.quantile(millis, 0.99),
                Folders.quantile(millis, 1));
    }

    /** Frames that showed something that none before had. */
    private static long distinct(List<long[]> frames) {
        return frames.stream().mapToLong(f -> f[1]).distinct().count();
    }

    /** From each arrival to the end of the first frame that holds it; what came last has none yet. */
    private static double[] waits(List<Came> came, List<long[]> frames) {
        List<Double> millis = new ArrayList<>();
        int at = 0;
        for (Came one : came) {
            while (at < frames.size() && frames.get(at)[1] < one.sessionNanos()) {
                at++;
            }
            if (at < frames.size()) {
                millis.add((frames.get(at)[0] - one.atNanos()) / 1e6);
            }
        }
        if (millis.size() < came.size() / 2) {
            throw new IllegalStateException(
                    "of " + came.size() + " chunks only " + millis.size() + " came to the screen");
        }
        return millis.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static void park(int seconds) {
        long end = System.nanoTime() + seconds * 1_000_000_000L;
        while (System.nanoTime() < end) {
            LockSupport.parkNanos(end - System.nanoTime());
        }
    }

    private static void feed(
            BenchPipeline pipeline, SessionHeader header, int rate, AtomicBoolean going, List<Came> came) {
        Random random = new Random(20261126);
        List<Encoder> encoders = new ArrayList<>();
        header.probes().forEach(p -> encoders.add(new Encoder(p.profile())));
        long next = System.nanoTime();
        for (long scan = 0; going.get(); scan++) {
            for (int p = 0; p < encoders.size(); p++) {
                byte[] bytes =
                        encoders.get(p).encode(values(header.probes().get(p).profile(), scan, random), good(header, p));
                long at = pipeline.nanos();
                synchronized (came) {
                    came.add(new Came(System.nanoTime(), at));
                }
                pipeline.listener(p).arrived(new Chunk(at, bytes));
            }
            next += 1_000_000_000L / rate;
            LockSupport.parkNanos(Math.max(0, next - System.nanoTime()));
        }
    }

    private static SampleStatus[] good(SessionHeader header, int probe) {
        SampleStatus[] all =
                new SampleStatus[header.probes().get(probe).profile().channels().size()];
        Arrays.fill(all, SampleStatus.OK);
        return all;
    }

    private static double[] values(Profile profile, long scan, Random random) {
        double[] values = new double[profile.channels().size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = Math.rint((35 + i + 5 * Math.sin(scan * 0.0007 + i)) * 100 + random.nextGaussian() * 1.5) / 100;
        }
        return values;
    }

    /** A chart each, with the last minute of its channel, drawn anew ten times a second. */
    private Figures usual(int seconds) throws Exception {
        List<XYSeries> series = new ArrayList<>();
        JFrame[] frame = new JFrame[1];
        long[] step = new long[1];
        Random random = new Random(20261126);
        EventQueue.invokeAndWait(() -> frame[0] = charts(series));
        Timer timer = new Timer(100, e -> {
            for (int n = 0; n < RATE / 10; n++) {
                step[0]++;
                for (int i = 0; i < series.size(); i++) {
                    double value = 35 + i + 5 * Math.sin(step[0] * 0.0007 + i) + 0.015 * random.nextGaussian();
                    series.get(i).add(step[0] / (double) RATE, value, n == RATE / 10 - 1);
                }
            }
        });
        try {
            timer.start();
            park(warmSeconds);
            painting.published = () -> step[0];
            painting.taken();
            long cpu = system.getProcessCpuTime();
            long start = System.nanoTime();
            park(seconds);
            double core = 100.0 * (system.getProcessCpuTime() - cpu) / (System.nanoTime() - start);
            double spent = (System.nanoTime() - start) / 1e9;
            return new Figures(distinct(painting.taken()) / spent, core, Double.NaN, Double.NaN, Double.NaN);
        } finally {
            timer.stop();
            EventQueue.invokeAndWait(frame[0]::dispose);
        }
    }

    private static JFrame charts(List<XYSeries> series) {
        JPanel all = new JPanel(new GridLayout(0, 4));
        for (int i = 0; i < PROBES * Feed.CHANNELS; i++) {
            XYSeries one = new XYSeries(i, false, true);
            one.setMaximumItemCount(MINUTE * RATE);
            for (int n = -MINUTE * RATE; n < 0; n++) {
                one.add(n / (double) RATE, 35 + i, false);
            }
            series.add(one);
            JFreeChart chart = ChartFactory.createXYLineChart(
                    null,
                    null,
                    null,
                    new XYSeriesCollection(one),
                    org.jfree.chart.plot.PlotOrientation.VERTICAL,
                    false,
                    false,
                    false);
            chart.getXYPlot().setBackgroundPaint(Color.WHITE);
            ChartPanel panel = new ChartPanel(chart);
            panel.setPreferredSize(new java.awt.Dimension(WIDTH / 4, HEIGHT / 16));
            all.add(panel);
        }
        JFrame frame = new JFrame("Library");
        frame.setContentPane(all);
        frame.setSize(WIDTH, HEIGHT);
        frame.setVisible(true);
        return frame;
    }
}
