package settlemark.ui;

import java.awt.AWTEvent;
import java.awt.EventQueue;
import java.awt.Toolkit;
import java.lang.management.ManagementFactory;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import settlemark.job.Progress;
import settlemark.measure.Role;
import settlemark.session.Snapshot;

/**
 * Measures the window on this machine: from the JVM's start to the first painted window, and what charting four
 * channels at ten samples a second costs the event thread. Arguments: width, height, seconds, optionally adjust or far.
 */
public final class MeasureMain {
    private MeasureMain() {}

    public static void main(String[] args) throws Exception {
        CountDownLatch painted = new CountDownLatch(1);
        long jvmStart = ManagementFactory.getRuntimeMXBean().getStartTime();
        Toolkit.getDefaultToolkit()
                .addAWTEventListener(e -> EventQueue.invokeLater(painted::countDown), AWTEvent.PAINT_EVENT_MASK);
        Thread warm = new Thread(Desktop::warm, "warm");
        warm.setDaemon(true);
        warm.start();
        boolean adjust = args.length > 3 && args[3].equals("adjust");
        Showroom room = new Showroom()
                .at("left-high", adjust ? Progress.OPEN : Progress.ARMED, 150)
                .moving(Role.SUPPLY, 2.6);
        if (adjust) {
            room.adjusting();
        }
        if (args.length > 3 && args[3].equals("plate")) {
            room.at("plate", Progress.OPEN, 1);
        }
        FakeDesk desk = new FakeDesk(room.snapshot());
        Desktop desktop = Desktop.open(
                desk,
                Optional.of(new FakeHands()),
                Optional.empty(),
                new FakeHost(),
                new DesktopOptions(false, Optional.empty(), Integer.parseInt(args[0]), Integer.parseInt(args[1])));
        painted.await();
        EventQueue.invokeAndWait(() -> Toolkit.getDefaultToolkit().sync());
        System.out.printf(
                Locale.ROOT,
                "first painted window %.2f s after the JVM's start%n",
                (System.currentTimeMillis() - jvmStart) / 1000.0);
        if (args.length > 3 && args[3].equals("far")) {
            EventQueue.invokeAndWait(() -> desktop.controller().perform(Deed.FAR_VIEW));
        }
        run(desk, room, Integer.parseInt(args[2]));
        System.exit(0);
    }

    private static void run(FakeDesk desk, Showroom room, int seconds) throws Exception {
        FutureTask<Long> eventThread =
                new FutureTask<>(() -> Thread.currentThread().getId());
        EventQueue.invokeLater(eventThread);
        long edt = eventThread.get();
        var threads = ManagementFactory.getThreadMXBean();
        CountDownLatch never = new CountDownLatch(1);
        long warm = 0;
        long before = 0;
        long start = System.nanoTime();
        for (int i = 0; i < seconds * 10; i++) {
            if (i == seconds * 3) {
                warm = System.nanoTime();
                before = threads.getThreadCpuTime(edt);
            }
            Snapshot next = room.seconds(room.seconds() + 0.1).snapshot();
            desk.show(next);
            long due = start + (i + 1) * 100_000_000L;
            never.await(Math.max(0, due - System.nanoTime()), TimeUnit.NANOSECONDS);
        }
        double wall = System.nanoTime() - warm;
        double share = (threads.getThreadCpuTime(edt) - before) / wall;
        System.out.printf(Locale.ROOT, "event thread %.1f %% of one core over %.0f s%n", share * 100, wall / 1e9);
    }
}
