package settlemark.ui;

import java.util.function.Supplier;
import javax.swing.JFrame;
import javax.swing.Timer;
import settlemark.session.BenchView;

/** A log of many channels in the window; it looks fifty times a second, and nothing it calls waits. */
final class BenchDesk {
    private final BenchController controller;
    private final Timer timer;
    private final InWindow window;
    private final String title;

    /** @param close the person ended the log */
    BenchDesk(JFrame frame, Look look, Supplier<BenchView> bench, Runnable close) {
        controller = new BenchController(look, bench, close, () -> restyle(look));
        title = "Settlemark: " + bench.get().snapshot().header().title();
        timer = new Timer(Looks.MILLIS, e -> controller.tick());
        window = new InWindow(frame, title, controller.pane(), close);
        controller.pane().requestFocusInWindow();
        timer.start();
    }

    BenchController controller() {
        return controller;
    }

    private void restyle(Look look) {
        window.restyle(look, () -> controller.speakAnew(pane -> window.show(title, pane)), controller::restyled);
    }

    /** The window goes on without it. */
    void leave() {
        timer.stop();
        window.leave();
    }
}
