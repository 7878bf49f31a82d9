package settlemark.ui;

import com.formdev.flatlaf.FlatDarkLaf;
import com.formdev.flatlaf.FlatLaf;
import com.formdev.flatlaf.FlatLightLaf;
import com.formdev.flatlaf.util.UIScale;
import java.awt.EventQueue;
import java.awt.GraphicsEnvironment;
import java.awt.Rectangle;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import javax.swing.JFrame;
import javax.swing.Timer;
import javax.swing.UIManager;
import settlemark.chart.Lane;
import settlemark.chart.LaneChart;
import settlemark.chart.LaneView;
import settlemark.chart.LineStyle;
import settlemark.chart.TimeLabels;
import settlemark.chart.ValueRange;
import settlemark.session.DemoHands;
import settlemark.session.Desk;
import settlemark.session.Snapshot;

/**
 * The window of a running job. It looks at the desk fifty times a second, shows what is new, and sends what the person does back to it;
 * nothing it calls can wait.
 */
public final class Desktop {
    private final JFrame frame;
    private final Desk desk;
    private final Controller controller;
    private Language language = Words.language();
    private final Timer timer;
    private long revision = Long.MIN_VALUE;
    private final Looks looks = new Looks();

    private Desktop(
            JFrame frame,
            Desk desk,
            Optional<DemoHands> hands,
            Optional<DemoSpeed> speed,
            DesktopHost host,
            Look look) {
        this.frame = frame;
        this.desk = desk;
        controller = new Controller(look, desk, hands, speed, host, this::close, this::restyle);
        frame.addWindowListener(new WindowAdapter() {
            @Override
            public void windowClosing(WindowEvent e) {
                close();
                host.close();
            }
        });
        timer = new Timer(Looks.MILLIS, e -> tick());
    }

    /**
     * Opens the window; returns when it is on the screen's way. May be called from any thread that holds no lock.
     *
     * @param desk the running session, which must be a job
     * @param hands the demo's hands: then the presses also do the physical acts
     * @param speed the demo's speed
     * @param host the program around the window
     */
    public static Desktop open(
            Desk desk, Optional<DemoHands> hands, Optional<DemoSpeed> speed, DesktopHost host, DesktopOptions options) {
        return DesktopStart.show(options, desk.snapshot().header().title()).open(desk, hands, speed, host);
    }

    /** The desktop in a window that is already shown. On the event thread. */
    static Desktop in(
            JFrame frame,
            Desk desk,
            Optional<DemoHands> hands,
            Optional<DemoSpeed> speed,
            DesktopHost host,
            Look look) {
        Desktop made = new Desktop(frame, desk, hands, speed, host, look);
        made.start();
        return made;
    }

    /** Runs on the event thread and waits for the result; for callers that hold no lock. */
    static <T> T onEventThread(Callable<T> work) {
        FutureTask<T> task = new FutureTask<>(work);
        if (EventQueue.isDispatchThread()) {
            task.run();
        } else {
            EventQueue.invokeLater(task);
        }
        try {
            return task.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while the window was opening", e);
        } catch (ExecutionException e) {
            throw new IllegalStateException("the window could not be opened: " + e.getCause(), e);
        }
    }

    /**
     * Loads the typeface and the charts while the session is still being prepared. Run it first of all, on a thread of
     * its own; {@link #open} need not wait for it.
     */
    public static void warm() {
        Look look = new Look(false, 1, Look.USUAL_PIXELS_PER_MM);
        BufferedImage image = new BufferedImage(200, 200, BufferedImage.TYPE_INT_RGB);
        Pen pen = new Pen(image.createGraphics(), look);
        pen.text("0", look.semiBold(Look.BODY), pen.theme().ink(), 0, 20);
        pen.text("0", look.regular(Look.BODY), pen.theme().ink(), 0, 20);
        Lane.TraceLine trace =
                new Lane.TraceLine("", "", LineStyle.UPSTREAM, new long[] {0, 1, 2}, new double[] {0, 1, 0}, 10);
        Lane lane = Lane.of("", new ValueRange(0, 1), List.of(trace));
        LaneView view = new LaneView(0, 2, -1, new TimeLabels.Since(0), List.of(lane), false);
        new LaneChart(look.theme(), 1).draw(pen.g, new Rectangle(200, 200), view);
        pen.dispose();
    }

    /** The language of every window from now on, whatever was kept; call it before the first. */
    public static void speak(Language language) {
        Words.ask(language);
    }

    /** Closes the window and stops looking at the desk; the program around it is not told. On the event thread. */
    public void close() {
        timer.stop();
        frame.dispose();
    }

    JFrame frame() {
        return frame;
    }

    Controller controller() {
        return controller;
    }

    private void start() {
        frame.setTitle("Settlemark: " + desk.snapshot().header().title());
        show(controller.pane());
        tick();
        controller.pane().requestFocusInWindow();
        timer.start();
    }

    /** Looks once; everything that is shown follows from the newest snapshot. */
    void tick() {
        Snapshot snapshot = desk.snapshot();
        long now = System.nanoTime();
        boolean changed = snapshot.revision() != revision;
        boolean regular = looks.look();
        if (changed) {
            looks.news();
        }
        boolean digits = looks.digits(now);
        if (changed || digits || regular && controller.dirty()) {
            revision = snapshot.revision();
            controller.show(snapshot, digits);
            if (digits) {
                looks.shown(now);
            }
        }
        controller.hear(now);
    }

    private void restyle() {
        if (Words.language() != language) {
            speakAnew();
            return;
        }
        InWindow.restyle(controller.look());
        controller.pane().restyle();
    }

    /** Another language: all that shows words is made anew, and what was on stays on. */
    private void speakAnew() {
        language = Words.language();
        controller.speakAnew(this::show);
    }

    private void show(DeskPane pane) {
        pane.setPreferredSize(frame.getContentPane().getSize());
        frame.setContentPane(pane);
        frame.validate();
    }

    static void laf(boolean dark) {
        // The frame keeps the window manager's own title bar: drawing it ourselves breaks its rules on Linux.
        System.setProperty("flatlaf.useWindowDecorations", "false");
        if (UIManager.getLookAndFeel() instanceof FlatLaf now && now.isDark() == dark) {
            return;
        }
        if (dark) {
            FlatDarkLaf.setup();
        } else {
            FlatLightLaf.setup();
        }
    }

    static Look look(DesktopOptions options) {
        return new Look(
                options.dark(),
                UIScale.getUserScaleFactor(),
                options.pixelsPerMm().orElse(Look.USUAL_PIXELS_PER_MM) / screenScale());
    }

    private static double screenScale() {
        return GraphicsEnvironment.getLocalGraphicsEnvironment()
                .getDefaultScreenDevice()
                .getDefaultConfiguration()
                .getDefaultTransform()
                .getScaleX();
    }
}
