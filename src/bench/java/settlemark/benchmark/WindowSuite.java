package settlemark.benchmark;

import java.awt.Color;
import java.awt.EventQueue;
import java.awt.GraphicsEnvironment;
import java.awt.Rectangle;
import java.awt.Robot;
import java.awt.Toolkit;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;
import settlemark.app.BenchPipeline;
import settlemark.decode.Encoder;
import settlemark.job.Act;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.session.DemoHands;
import settlemark.session.Desk;
import settlemark.session.LiveSession;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeSetup;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.Snapshot;
import settlemark.store.SqliteStore;
import settlemark.store.WorkspacePlace;
import settlemark.ui.Desktop;
import settlemark.ui.DesktopOptions;
import settlemark.ui.DesktopStart;

/**
 * From the start of the packaged program's Java machine to its painted window, beside an empty window of the platform in a
 * Java machine of its own; and the heap of a job's window after an hour of more than 16 channels of ten samples a second,
 * with the store, in fast time.
 *
 * <p>{@code --jar FILE} (target/settlemark.jar), {@code --minutes N} of the second part (60). It wants a display with
 * nothing else on it ({@code xvfb-run -a}).
 */
final class WindowSuite implements BenchmarkMain.Suite {
    private static final int STARTS = 7;
    private static final long POLL_NANOS = 8_000_000L;
    private static final long LONGEST_NANOS = 60_000_000_000L;
    private static final int OTHER_PROBES = 2;
    private static final int RATE = 10;
    private static final long SECOND_NANOS = 1_000_000_000L;

    @Override
    public void run(List<String> arguments) throws Exception {
        if (GraphicsEnvironment.isHeadless()) {
            throw new IllegalStateException("this measures a window: run it on a display, such as by xvfb-run -a");
        }
        Path jar = Path.of(word(arguments, "--jar", "target/settlemark.jar"));
        int minutes = (int) StoreSuite.number(withoutJar(arguments), "--minutes", 60);
        if (!Files.exists(jar)) {
            throw new IllegalStateException(
                    "there is no packaged program " + jar + ": run mvn -DskipTests package first, or say --jar FILE");
        }
        double[] ours = starts(List.of("-jar", jar.toString(), "demo", "--size", "1280x720"));
        double[] empty = starts(List.of("-cp", Measured.classPath(), EmptyWindow.class.getName()));
        row("the packaged program", ours);
        row("an empty window", empty);
        double heap = hour(minutes);
        System.out.printf(
                Locale.ROOT, "heap after %d minutes of a job, %d channels: %.0f MB%n", minutes, channels(), heap);
        System.out.printf(
                Locale.ROOT,
                "result painted_ms=%.0f vs_empty_window=%.1f heap_mb=%.0f%n",
                median(ours),
                median(ours) / median(empty),
                heap);
    }

    private static String word(List<String> arguments, String name, String usual) {
        int at = arguments.indexOf(name);
        return at < 0 ? usual : arguments.get(at + 1);
    }

    private static List<String> withoutJar(List<String> arguments) {
        int at = arguments.indexOf("--jar");
        return at < 0
                ? arguments
                : Stream.concat(arguments.subList(0, at).stream(), arguments.subList(at + 2, arguments.size()).stream())
                        .toList();
    }

    private static void row(String name, double[] millis) {
        double[] sorted = millis.clone();
        Arrays.sort(sorted);
        System.out.printf(
                Locale.ROOT,
                "%-24s painted after %.0f ms, the median of %d; %.0f to %.0f%n",
                name,
                median(millis),
                millis.length,
                sorted[0],
                sorted[sorted.length - 1]);
    }

    private static double median(double[] values) {
        return Folders.quantile(values, 0.5);
    }

    /** The platform alone. */
    static final class EmptyWindow {
        private EmptyWindow() {}

        public static void main(String[] arguments) {
            SwingUtilities.invokeLater(() -> {
                JFrame frame = new JFrame("Empty");
                frame.setDefaultCloseOperation(JFrame.EXIT_ON_CLOSE);
                frame.getContentPane().setBackground(Color.WHITE);
                frame.setSize(1280, 720);
                frame.setVisible(true);
            });
        }
    }

    /** Milliseconds from the start of a Java machine to something on a screen that was empty; one start more goes before. */
    private static double[] starts(List<String> arguments) throws Exception {
        double[] millis = new double[STARTS];
        for (int i = -1; i < STARTS; i++) {
            double took = start(arguments);
            if (i >= 0) {
                millis[i] = took;
            }
        }
        return millis;
    }

    private static double start(List<String> arguments) throws Exception {
        Path home = Folders.make();
        Robot robot = new Robot();
        Rectangle part = new Rectangle(200, 200, 600, 300);
        int before = robot.getPixelColor(500, 350).getRGB();
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()));
        command.addAll(arguments);
        ProcessBuilder builder = new ProcessBuilder(command)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.DISCARD);
        builder.environment().put("XDG_DATA_HOME", home.toString());
        long start = System.nanoTime();
        Process process = builder.start();
        try {
            while (!painted(robot.createScreenCapture(part), before)) {
                if (System.nanoTime() - start > LONGEST_NANOS || !process.isAlive()) {
                    throw new IllegalStateException("no window was painted: " + String.join(" ", command));
                }
                LockSupport.parkNanos(POLL_NANOS);
            }
            return (System.nanoTime() - start) / 1e6;
        } finally {
            process.destroyForcibly();
            process.waitFor(20, TimeUnit.SECONDS);
            while (robot.getPixelColor(500, 350).getRGB() != before) {
                LockSupport.parkNanos(POLL_NANOS);
            }
            Folders.delete(home);
        }
    }

    /** Nothing of the empty screen is left there. */
    private static boolean painted(BufferedImage part, int before) {
        for (int x = 0; x < part.getWidth(); x += 20) {
            for (int y = 0; y < part.getHeight(); y += 20) {
                if (part.getRGB(x, y) == before) {
                    return false;
                }
            }
        }
        return true;
    }

    private static SessionHeader header() {
        SessionHeader job = BenchPipeline.job();
        List<ProbeSetup> probes = new ArrayList<>(job.probes());
        for (int i = 0; i < OTHER_PROBES; i++) {
            probes.add(new ProbeSetup(
                    "other-" + i,
                    new ProbeAddress("serial", "other-" + i),
                    Streams.EIGHT_CHANNELS,
                    java.util.Map.of()));
        }
        return new SessionHeader(
                job.key(),
                job.title(),
                Instant.EPOCH,
                job.zone(),
                job.pressureUnit(),
                job.temperatureUnit(),
                probes,
                job.plan(),
                job.plate(),
                "bench");
    }

    private static int channels() {
        return header().probes().stream()
                .mapToInt(p -> p.profile().channels().size())
                .sum();
    }

    /** A session in which nobody acts. */
    private static final class Shown implements Desk {
        private volatile Snapshot newest;

        Shown(Snapshot first) {
            newest = first;
        }

        @Override
        public Snapshot snapshot() {
            return newest;
        }

        @Override
        public void act(Act act) {
            // Nobody acts.
        }
    }

    /** Megabytes in use after the hour, what is no longer reached taken away. */
    private static double hour(int minutes) throws Exception {
        Path folder = Folders.make();
        SessionHeader header = header();
        LiveSession live = new LiveSession(header);
        Shown desk = new Shown(live.snapshot(Instant.EPOCH));
        try (SqliteStore store = SqliteStore.open(WorkspacePlace.chosen(folder.resolve("w.settlemark")), text -> {
            throw new IllegalArgumentException("not needed");
        })) {
            long session = store.begin(header);
            DesktopStart window = DesktopStart.show(new DesktopOptions(false, Optional.empty(), 1280, 720), "Hour");
            Optional<DemoHands> nobody = Optional.empty();
            Desktop desktop = window.open(desk, nobody, Optional.empty(), new NoProgram());
            live.take(new SessionEvent.Done(1, new Act.Confirm("plate")));
            live.take(new SessionEvent.Done(2, new Act.Confirm("probes")));
            feed(header, live, desk, store, session, minutes);
            EventQueue.invokeAndWait(() -> Toolkit.getDefaultToolkit().sync());
            double used = used();
            EventQueue.invokeAndWait(desktop::close);
            return used;
        } finally {
            Folders.delete(folder);
        }
    }

    private static void feed(
            SessionHeader header, LiveSession live, Shown desk, SessionStore store, long session, int minutes)
            throws Exception {
        Random random = new Random(20261126);
        List<Encoder> encoders = new ArrayList<>();
        header.probes().forEach(p -> encoders.add(new Encoder(p.profile())));
        for (long scan = 1; scan <= 60L * minutes * RATE; scan++) {
            long at = scan * (SECOND_NANOS / RATE);
            for (int p = 0; p < encoders.size(); p++) {
                double[] values =
                        new double[header.probes().get(p).profile().channels().size()];
                SampleStatus[] good = new SampleStatus[values.length];
                Arrays.fill(good, SampleStatus.OK);
                for (int i = 0; i < values.length; i++) {
                    values[i] =
                            Math.rint((35 + i + 5 * Math.sin(scan * 0.007 + i)) * 100 + random.nextGaussian()) / 100;
                }
                live.take(
                        new SessionEvent.Bytes(p, new Chunk(at, encoders.get(p).encode(values, good))));
            }
            if (scan % RATE == 0) {
                store.append(session, live.drain());
                desk.newest = live.snapshot(Instant.EPOCH.plusNanos(at));
            }
            if (scan % (60 * RATE) == 0) {
                // The window shows each minute before the next comes.
                EventQueue.invokeAndWait(() -> {});
            }
        }
    }

    private static double used() {
        Runtime runtime = Runtime.getRuntime();
        double least = Double.MAX_VALUE;
        for (int i = 0; i < 5; i++) {
            System.gc();
            least = Math.min(least, (runtime.totalMemory() - runtime.freeMemory()) / 1e6);
        }
        return least;
    }
}
