package settlemark.ui;

import com.formdev.flatlaf.FlatLaf;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import javax.swing.JFrame;
import javax.swing.Timer;

/** Stored sessions in the window; it looks ten times a second, and nothing it calls waits. */
final class ReviewDesk {
    private static final int TICK_MILLIS = 100;

    private final JFrame frame;
    private final ReviewController controller;
    private final Timer timer;
    private final WindowAdapter closing;

    /**
     * @param back goes back to where the review was opened from
     * @param close the person closed the window
     */
    ReviewDesk(JFrame frame, Look look, ReviewHost host, Runnable back, Runnable close) {
        this.frame = frame;
        controller = new ReviewController(look, host, back, close, () -> restyle(look));
        closing = new WindowAdapter() {
            @Override
            public void windowClosing(WindowEvent event) {
                close.run();
            }
        };
        timer = new Timer(TICK_MILLIS, e -> controller.tick(System.nanoTime()));
        ReviewPane pane = controller.pane();
        pane.setPreferredSize(frame.getContentPane().getSize());
        frame.addWindowListener(closing);
        frame.setTitle("Settlemark: " + Words.say("review"));
        frame.setContentPane(pane);
        frame.validate();
        pane.sessions().lines().requestFocusInWindow();
        timer.start();
    }

    ReviewController controller() {
        return controller;
    }

    private void restyle(Look look) {
        Desktop.laf(look.dark());
        FlatLaf.updateUI();
        controller.restyled();
    }

    /** The window goes on without it. */
    void leave() {
        timer.stop();
        frame.removeWindowListener(closing);
    }
}
