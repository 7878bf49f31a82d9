package settlemark.benchmark;

import java.awt.EventQueue;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.locks.LockSupport;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import settlemark.chart.ChartTheme;
import settlemark.chart.Lane;
import settlemark.chart.LaneChart;
import settlemark.chart.LaneView;
import settlemark.chart.LineStyle;
import settlemark.chart.TimeLabels;
import settlemark.chart.ValueRange;
import settlemark.settle.SettleDetector;
import settlemark.settle.SettleKind;
import settlemark.settle.SettleSettings;

/**
 * A frame of two lanes with two traces of a million samples each, all in view and smoothed, beside the chart library's
 * usual collection with the same samples; and how long the event thread makes others wait while it draws ten such frames
 * a second and sixteen detectors take ten samples a second each on another thread.
 */
final class ChartSuite implements BenchmarkMain.Suite {
    private static final int SAMPLES = 1_000_000;
    private static final int WIDTH = 1200;
    private static final int HEIGHT = 620;
    private static final int WARM_FRAMES = 20;
    private static final int FRAMES = 60;
    private static final int DEFAULT_FRAMES = 3;
    private static final long STEP_NANOS = 10_000_000L;
    private static final long STREAM_SECONDS = 30;
    private static final int CHANNELS = 16;
    private static final long FRAME_MILLIS = 100;
    private static final long PROBE_NANOS = 2_000_000L;

    private final long[] times = new long[SAMPLES];
    private final double[][] values = new double[4][SAMPLES];

    @Override
    public void run(List<String> arguments) throws Exception {
        if (!arguments.isEmpty()) {
            throw new IllegalArgumentException("chart takes no arguments, got " + arguments);
        }
        long seed = 11;
        fill(new Random(seed));
        System.out.println("2 lanes x 2 traces x " + SAMPLES + " samples, " + WIDTH + " x " + HEIGHT
                + " pixels, smoothed; seed " + seed);
        double ours = median(frames(WARM_FRAMES, FRAMES, (image, g) -> ours(image)));
        System.out.printf(Locale.ROOT, "lane chart                  %10.1f ms a frame, median of %d%n", ours, FRAMES);
        // Before the other chart has filled the heap with its own samples.
        double[] waits = eventThread();
        double p999 = waits[(int) Math.ceil(waits.length * 0.999) - 1];
        System.out.printf(
                Locale.ROOT,
                "event thread, %d frames a second: waits of %d probes: median %.1f ms, p99.9 %.1f ms, worst %.1f ms%n",
                1000 / FRAME_MILLIS,
                waits.length,
                median(waits),
                p999,
                waits[waits.length - 1]);
        JFreeChart usual = usual();
        double others = median(
                frames(1, DEFAULT_FRAMES, (image, g) -> usual.draw(g, new Rectangle2D.Double(0, 0, WIDTH, HEIGHT))));
        System.out.printf(
                Locale.ROOT, "library's usual collection  %10.1f ms a frame, median of %d%n", others, DEFAULT_FRAMES);
        System.out.printf(
                Locale.ROOT, "result frame_ms=%.1f vs_default=%.1f event_p999_ms=%.1f%n", ours, others / ours, p999);
    }

    private void fill(Random random) {
        for (int i = 0; i < SAMPLES; i++) {
            times[i] = i * STEP_NANOS;
            double slow = Math.sin(i / 40_000.0);
            values[0][i] = 7 + 0.3 * slow + 0.02 * random.nextGaussian();
            values[1][i] = 3.5 + 0.5 * slow + 0.02 * random.nextGaussian();
            values[2][i] = 120 + 8 * slow + 0.2 * random.nextGaussian();
            values[3][i] = 70 + slow + 0.2 * random.nextGaussian();
        }
    }

    private interface Drawing {
        void on(BufferedImage image, Graphics2D graphics);
    }

    private static double[] frames(int warm, int count, Drawing drawing) {
        BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
        double[] millis = new double[count];
        for (int i = -warm; i < count; i++) {
            Graphics2D graphics = image.createGraphics();
            long start = System.nanoTime();
            drawing.on(image, graphics);
            if (i >= 0) {
                millis[i] = (System.nanoTime() - start) / 1e6;
            }
            graphics.dispose();
        }
        int white = ChartTheme.LIGHT.sheet().getRGB();
        boolean drawn =
                Arrays.stream(image.getRGB(0, 0, WIDTH, HEIGHT, null, 0, WIDTH)).anyMatch(p -> p != white);
        if (!drawn) {
            throw new IllegalStateException("nothing was drawn");
        }
        return millis;
    }

    /** As the window draws it. */
    private void ours(BufferedImage image) {
        Lane.TraceLine[] traces = new Lane.TraceLine[values.length];
        for (int i = 0; i < traces.length; i++) {
            LineStyle style = i % 2 == 0 ? LineStyle.UPSTREAM : LineStyle.ANSWERING;
            traces[i] = new Lane.TraceLine("trace " + i, "", style, times, values[i], 5_000_000_000L);
        }
        LaneView view = new LaneView(
                0,
                times[SAMPLES - 1],
                -1,
                new TimeLabels.Since(0),
                List.of(
                        Lane.of("inH2O", new ValueRange(0, 8), List.of(traces[0], traces[1])),
                        Lane.of("degF", new ValueRange(60, 140), List.of(traces[2], traces[3]))),
                true);
        new LaneChart(ChartTheme.LIGHT, 1).draw(image, 1, new Rectangle2D.Double(0, 0, WIDTH, HEIGHT), view);
    }

    private JFreeChart usual() {
        CombinedDomainXYPlot both = new CombinedDomainXYPlot(new NumberAxis("s"));
        for (int lane = 0; lane < 2; lane++) {
            XYSeriesCollection collection = new XYSeriesCollection();
            for (int t = 0; t < 2; t++) {
                XYSeries series = new XYSeries(t, false, true);
                double[] own = values[2 * lane + t];
                for (int i = 0; i < SAMPLES; i++) {
                    series.add(times[i] / 1e9, own[i], false);
                }
                collection.addSeries(series);
            }
            NumberAxis axis = new NumberAxis();
            axis.setAutoRangeIncludesZero(false);
            both.add(new XYPlot(collection, null, axis, new XYLineAndShapeRenderer(true, false)));
        }
        JFreeChart chart = new JFreeChart(both);
        chart.setAntiAlias(true);
        return chart;
    }

    /** Milliseconds that each probe waited for the event thread, in order of size. */
    private double[] eventThread() throws InterruptedException {
        AtomicBoolean going = new AtomicBoolean(true);
        BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
        Thread painter = new Thread(() -> paint(going, image), "painter");
        Thread stream = new Thread(() -> stream(going), "stream");
        painter.start();
        stream.start();
        List<Double> waits = new ArrayList<>();
        long end = System.nanoTime() + STREAM_SECONDS * 1_000_000_000L;
        while (System.nanoTime() < end) {
            long asked = System.nanoTime();
            EventQueue.invokeLater(() -> {
                double waited = (System.nanoTime() - asked) / 1e6;
                synchronized (waits) {
                    waits.add(waited);
                }
            });
            LockSupport.parkNanos(PROBE_NANOS);
        }
        going.set(false);
        painter.join();
        stream.join();
        synchronized (waits) {
            return waits.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        }
    }

    private void paint(AtomicBoolean going, BufferedImage image) {
        while (going.get()) {
            EventQueue.invokeLater(() -> ours(image));
            LockSupport.parkNanos(FRAME_MILLIS * 1_000_000);
        }
    }

    private void stream(AtomicBoolean going) {
        List<SettleDetector> detectors = new ArrayList<>();
        for (int i = 0; i < CHANNELS; i++) {
            detectors.add(new SettleDetector(SettleSettings.defaults(SettleKind.GAS), Double.NaN, event -> {}));
        }
        for (int i = 0; going.get(); i++) {
            for (int c = 0; c < CHANNELS; c++) {
                detectors.get(c).accept(i / 10.0, values[c % 2][i % SAMPLES]);
            }
            LockSupport.parkNanos(FRAME_MILLIS * 1_000_000);
        }
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
