package settlemark.ui;

import java.awt.AWTEvent;
import java.awt.EventQueue;
import java.awt.Toolkit;
import java.lang.management.ManagementFactory;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
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
    private static final CompletableFuture<DesktopStart> SHOWN = new CompletableFuture<>();

    private MeasureMain() {}

    public static void main(String[] args) throws Exception {
        long jvmStart = ManagementFactory.getRuntimeMXBean().getStartTime();
        DesktopOptions options =
                new DesktopOptions(false, Optional.empty(), Integer.parseInt(args[0]), Integer.parseInt(args[1]));
        String scene = args.length > 3 ? args[3] : "";
        Thread warm = new Thread(Desktop::warm, "warm");
        warm.setDaemon(true);
        warm.start();
        CountDownLatch painted = new CountDownLatch(1);
        Thread first = new Thread(
                () -> {
                    DesktopStart start = DesktopStart.show(options, "Preparing the demo rig");
                    SHOWN.complete(start);
                },
                "show");
        Toolkit.getDefaultToolkit()
                .addAWTEventListener(
                        e -> EventQueue.invokeLater(() -> {
                            Toolkit.getDefaultToolkit().sync();
                            say("window painted", painted.getCount() > 0 ? jvmStart : 0);
                            painted.countDown();
                        }),
                        AWTEvent.PAINT_EVENT_MASK);
        first.start();
        FakeDesk desk = new FakeDesk(room(scene).snapshot());
        say("session ready", jvmStart);
        Desktop desktop = SHOWN.get().open(desk, Optional.of(new FakeHands()), Optional.empty(), new FakeHost());
        painted.await();
        EventQueue.invokeAndWait(() -> Toolkit.getDefaultToolkit().sync());
        say("job shown", jvmStart);
        if (scene.equals("far")) {
            EventQueue.invokeAndWait(() -> desktop.controller().perform(Deed.FAR_VIEW));
        }
        run(desk, room(scene), Integer.parseInt(args[2]));
        System.exit(0);
    }

    private static Showroom room(String scene) {
        Showroom room = new Showroom()
                .at("left-high", scene.equals("adjust") ? Progress.OPEN : Progress.ARMED, 150)
                .moving(Role.SUPPLY, 2.6);
        if (scene.equals("adjust")) {
            room.adjusting();
        }
        return scene.equals("plate") ? room.at("plate", Progress.OPEN, 1) : room;
    }

    private static void say(String what, long jvmStart) {
        if (jvmStart > 0) {
            double seconds = (System.currentTimeMillis() - jvmStart) / 1000.0;
            System.out.printf(Locale.ROOT, "%s %.2f s after the JVM's start%n", what, seconds);
        }
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
