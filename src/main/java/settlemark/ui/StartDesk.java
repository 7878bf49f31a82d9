package settlemark.ui;

import javax.swing.JFrame;
import javax.swing.Timer;

/** The window before there is a session: it looks at what was found ten times a second, and nothing it calls waits. */
final class StartDesk {
    private static final int TICK_MILLIS = 100;

    private final StartController controller;
    private final Timer timer;
    private final InWindow window;

    /**
     * @param review opens the stored sessions in this window
     * @param workshop opens the profile workshop in it
     */
    StartDesk(JFrame frame, Look look, StartHost host, Runnable review, Runnable workshop) {
        controller = new StartController(look, host, review, workshop, () -> restyle(look));
        timer = new Timer(TICK_MILLIS, e -> controller.tick());
        window = new InWindow(frame, "Settlemark", controller.pane(), host::close);
        timer.start();
    }

    StartController controller() {
        return controller;
    }

    private void restyle(Look look) {
        window.restyle(look, () -> controller.speakAnew(pane -> window.show("Settlemark", pane)), controller::restyled);
    }

    /** The window goes on without it. */
    void leave() {
        timer.stop();
        window.leave();
        controller.closed();
    }
}
