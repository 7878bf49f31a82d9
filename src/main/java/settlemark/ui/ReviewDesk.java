package settlemark.ui;

import javax.swing.JFrame;
import javax.swing.Timer;

/** Stored sessions in the window; it looks ten times a second, and nothing it calls waits. */
final class ReviewDesk {
    private static final int TICK_MILLIS = 100;

    private final ReviewController controller;
    private final Timer timer;
    private final InWindow window;

    /**
     * @param back goes back to where the review was opened from
     * @param close the person closed the window
     */
    ReviewDesk(JFrame frame, Look look, ReviewHost host, Runnable back, Runnable close) {
        controller = new ReviewController(look, host, back, close, () -> restyle(look));
        timer = new Timer(TICK_MILLIS, e -> controller.tick(System.nanoTime()));
        ReviewPane pane = controller.pane();
        window = new InWindow(frame, title(), pane, close);
        pane.sessions().lines().requestFocusInWindow();
        timer.start();
    }

    ReviewController controller() {
        return controller;
    }

    private static String title() {
        return "Settlemark: " + Words.say("review");
    }

    private void restyle(Look look) {
        window.restyle(look, () -> controller.speakAnew(pane -> window.show(title(), pane)), controller::restyled);
    }

    /** The window goes on without it. */
    void leave() {
        timer.stop();
        window.leave();
    }
}
