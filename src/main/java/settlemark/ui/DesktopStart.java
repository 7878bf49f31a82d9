package settlemark.ui;

import java.awt.Dimension;
import java.awt.GraphicsEnvironment;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import javax.accessibility.AccessibleRole;
import javax.swing.JFrame;
import org.jspecify.annotations.Nullable;
import settlemark.chart.Mark;
import settlemark.session.BenchView;
import settlemark.session.DemoHands;
import settlemark.session.Desk;

/**
 * The window as it stands while the session is still being prepared: the mark and what is being done. {@link #open}
 * turns the same window into the desktop.
 */
public final class DesktopStart {
    private static final int LEAST_WIDTH = 900;
    private static final int LEAST_HEIGHT = 520;

    private final JFrame frame = new JFrame("Settlemark");
    private final Look look;
    private final boolean sized;
    private @Nullable StartDesk begin;
    private @Nullable WorkshopDesk workshop;
    private @Nullable Desktop running;
    private Runnable leaving = () -> {};
    private ScreenState state = ScreenState.NONE;
    private ScreenState.@Nullable Place place;

    private DesktopStart(DesktopOptions options, String words) {
        this.look = Desktop.look(options);
        this.sized = options.widthPx() > 0 && options.heightPx() > 0;
        frame.setIconImages(List.of(icon(look, 32), icon(look, 64)));
        frame.setDefaultCloseOperation(JFrame.DO_NOTHING_ON_CLOSE);
        ComponentAdapter stands = new ComponentAdapter() {
            @Override
            public void componentMoved(ComponentEvent event) {
                stood();
            }

            @Override
            public void componentResized(ComponentEvent event) {
                stood();
            }
        };
        frame.addComponentListener(stands);
        Waiting waiting = new Waiting(look, words);
        frame.setContentPane(waiting);
        if (sized) {
            waiting.setPreferredSize(new Dimension(options.widthPx(), options.heightPx()));
            frame.pack();
        } else {
            frame.setMinimumSize(new Dimension(LEAST_WIDTH, LEAST_HEIGHT));
            frame.setBounds(GraphicsEnvironment.getLocalGraphicsEnvironment().getMaximumWindowBounds());
        }
        frame.setVisible(true);
    }

    /**
     * Shows the window at once. May be called from any thread that holds no lock.
     *
     * @param words what is being done, for instance {@code Preparing the demo rig}
     */
    public static DesktopStart show(DesktopOptions options, String words) {
        return Desktop.onEventThread(() -> {
            Desktop.laf(options.dark());
            return new DesktopStart(options, words);
        });
    }

    /** Lets the person choose how to begin, in this window; what they choose the host hears. */
    public void choose(StartHost host) {
        Desktop.onEventThread(() -> {
            openAgain(host);
            return this;
        });
    }

    /** Puts back how the window looked the last time; a size that was asked for goes before it. */
    public void restore(ScreenState kept) {
        Desktop.onEventThread(() -> {
            state = kept;
            if (kept.pixelsPerMm() > 0) {
                look.pixelsPerMm(kept.pixelsPerMm());
            }
            Words.keep(kept.language());
            if (kept.dark() && !look.dark()) {
                look.dark(true);
                Desktop.laf(true);
            }
            kept.place().filter(p -> !sized && fits(p)).ifPresent(p -> {
                frame.setBounds(p.x(), p.y(), p.width(), p.height());
                frame.validate();
            });
            return this;
        });
    }

    private static boolean fits(ScreenState.Place place) {
        return place.width() >= LEAST_WIDTH
                && place.height() >= LEAST_HEIGHT
                && GraphicsEnvironment.getLocalGraphicsEnvironment()
                        .getMaximumWindowBounds()
                        .contains(place.x(), place.y(), place.width(), place.height());
    }

    /** How the window looks now. */
    public ScreenState state() {
        return Desktop.onEventThread(() -> {
            gather();
            ScreenState.Place last = place == null ? state.place().orElse(null) : place;
            boolean measured = look.pixelsPerMm() != Look.USUAL_PIXELS_PER_MM;
            return state.seen(look.dark(), measured ? look.pixelsPerMm() : 0, last, Words.language());
        });
    }

    private void stood() {
        if (frame.isShowing()) {
            place = new ScreenState.Place(frame.getX(), frame.getY(), frame.getWidth(), frame.getHeight());
        }
    }

    private void gather() {
        StartDesk open = begin;
        Desktop job = running;
        if (open != null) {
            state = state.typed(open.controller().texts()).at(open.controller().page());
        }
        WorkshopDesk drafts = workshop;
        if (drafts != null) {
            state = state.begun(drafts.controller().kept());
        }
        if (job != null) {
            // The plate of a job that has begun is stored with it.
            state = job.controller()
                    .kept(state)
                    .typed(Map.of())
                    .at(ScreenState.FIRST)
                    .in(job.controller().place());
        }
    }

    private void begin(StartHost host) {
        leaveStart();
        StartDesk desk = new StartDesk(frame, look, host, () -> review(host), () -> workshop(host));
        desk.controller().restore(state.plate());
        begin = desk;
        leaving = desk::leave;
    }

    /** Opens what was open when the window was last seen. */
    private void openAgain(StartHost host) {
        String page = state.page();
        begin(host);
        switch (page) {
            case "review" -> review(host);
            case "workshop" -> workshop(host);
            default -> {
                if (begin != null) {
                    begin.controller().openAgain(page);
                }
            }
        }
    }

    private void review(StartHost host) {
        leaveStart();
        state = state.at("review");
        leaving = new ReviewDesk(frame, look, host.review(), () -> begin(host), host::close)::leave;
    }

    private void workshop(StartHost host) {
        leaveStart();
        state = state.at("workshop");
        WorkshopDesk desk = new WorkshopDesk(frame, look, host.workshop(), () -> begin(host), host::close);
        desk.controller().putBack(state.workshop());
        workshop = desk;
        leaving = desk::leave;
    }

    /**
     * Shows a stored session and plays it, in this window.
     *
     * @param workspace that it lies in
     * @param session its number
     * @param pace how many times as fast as it was, 1 to 100
     * @param close runs when the person is done with it
     */
    public void review(ReviewHost host, Path workspace, long session, int pace, Runnable close) {
        Desktop.onEventThread(() -> {
            leaveStart();
            ReviewDesk desk = new ReviewDesk(frame, look, host, close, close);
            desk.controller().openAtOnce(workspace, session, pace);
            leaving = desk::leave;
            return this;
        });
    }

    /**
     * Shows a log of many channels, in this window.
     *
     * @param bench gives its newest view; never waits
     * @param close runs when the person ends the log
     */
    public void bench(Supplier<BenchView> bench, Runnable close) {
        Desktop.onEventThread(() -> {
            leaveStart();
            leaving = new BenchDesk(frame, look, bench, close)::leave;
            return this;
        });
    }

    /** The desktop, in this window; see {@link Desktop#open}. */
    public Desktop open(Desk desk, Optional<DemoHands> hands, Optional<DemoSpeed> speed, DesktopHost host) {
        return Desktop.onEventThread(() -> {
            leaveStart();
            Desktop opened = Desktop.in(frame, desk, hands, speed, host, look);
            opened.controller().restore(state);
            state.job().ifPresent(opened.controller()::stand);
            running = opened;
            return opened;
        });
    }

    private void leaveStart() {
        gather();
        begin = null;
        workshop = null;
        leaving.run();
        leaving = () -> {};
    }

    /** Takes the window away where there is nothing to open. */
    public void close() {
        Desktop.onEventThread(() -> {
            leaveStart();
            frame.dispose();
            return this;
        });
    }

    private static BufferedImage icon(Look look, int size) {
        BufferedImage image = new BufferedImage(size, size, BufferedImage.TYPE_INT_ARGB);
        Pen pen = new Pen(image.createGraphics(), look);
        pen.fill(pen.theme().sheet(), 0, 0, size, size);
        Mark.STAPLE.draw(pen.g, size * 0.1, size * 0.1, size * 0.8, pen.theme());
        pen.dispose();
        return image;
    }

    /** The mark and one line. */
    private static final class Waiting extends Painted {
        Waiting(Look look, String words) {
            super(look, AccessibleRole.PANEL);
            sentence(words);
        }

        @Override
        void draw(Pen pen) {
            pen.fill(pen.theme().window(), 0, 0, getWidth(), getHeight());
            double size = look.px(64);
            double middle = getHeight() / 2.0;
            Mark.STAPLE.draw(pen.g, (getWidth() - size) / 2, middle - size, size, pen.theme());
            pen.textCentred(
                    sentence(), look.semiBold(Look.LABEL), pen.theme().ink(), getWidth() / 2.0, middle + look.px(40));
        }
    }
}
