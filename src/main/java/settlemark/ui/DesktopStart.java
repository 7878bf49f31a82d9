package settlemark.ui;

import java.awt.Dimension;
import java.awt.GraphicsEnvironment;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.accessibility.AccessibleRole;
import javax.swing.JFrame;
import org.jspecify.annotations.Nullable;
import settlemark.chart.Mark;
import settlemark.session.DemoHands;
import settlemark.session.Desk;

/**
 * The window as it stands while the session is still being prepared: the mark and what is being done. {@link #open}
 * turns the same window into the desktop.
 */
public final class DesktopStart {
    private final JFrame frame = new JFrame("Settlemark");
    private final Look look;
    private @Nullable StartDesk begin;
    private @Nullable ReviewDesk reviewing;

    private DesktopStart(DesktopOptions options, String words) {
        this.look = Desktop.look(options);
        frame.setIconImages(List.of(icon(look, 32), icon(look, 64)));
        frame.setDefaultCloseOperation(JFrame.DO_NOTHING_ON_CLOSE);
        Waiting waiting = new Waiting(look, words);
        frame.setContentPane(waiting);
        if (options.widthPx() > 0 && options.heightPx() > 0) {
            waiting.setPreferredSize(new Dimension(options.widthPx(), options.heightPx()));
            frame.pack();
        } else {
            frame.setMinimumSize(new Dimension(900, 520));
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
            begin(host);
            return this;
        });
    }

    private void begin(StartHost host) {
        leaveStart();
        begin = new StartDesk(frame, look, host, () -> {
            leaveStart();
            reviewing = new ReviewDesk(frame, look, host.review(), () -> begin(host), host::close);
        });
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
            reviewing = desk;
            return this;
        });
    }

    /** The desktop, in this window; see {@link Desktop#open}. */
    public Desktop open(Desk desk, Optional<DemoHands> hands, Optional<DemoSpeed> speed, DesktopHost host) {
        return Desktop.onEventThread(() -> {
            leaveStart();
            return Desktop.in(frame, desk, hands, speed, host, look);
        });
    }

    private void leaveStart() {
        StartDesk open = begin;
        begin = null;
        if (open != null) {
            open.leave();
        }
        ReviewDesk looked = reviewing;
        reviewing = null;
        if (looked != null) {
            looked.leave();
        }
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
