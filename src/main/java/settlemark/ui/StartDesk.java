package settlemark.ui;

import javax.swing.JFrame;
import javax.swing.Timer;

/** The window before there is a session: it looks at what was found ten times a second, and nothing it calls waits. */
final class StartDesk {
    private static final int TICK_MILLIS = 100;

    private final StartController controller;
    private final Timer timer;
    private final InWindow window;
    private final Language made = Words.language();

    /**
     * @param review opens the stored sessions in this window
     * @param workshop opens the profile workshop in it
     * @param again makes it anew, in the language of now
     */
    StartDesk(JFrame frame, Look look, StartHost host, Runnable review, Runnable workshop, Runnable again) {
        controller = new StartController(look, host, review, workshop, () -> {
            if (Words.language() == made) {
                restyle(look);
            } else {
                again.run();
            }
        });
        timer = new Timer(TICK_MILLIS, e -> controller.tick());
        window = new InWindow(frame, "Settlemark", controller.pane(), host::close);
        timer.start();
    }

    StartController controller() {
        return controller;
    }

    private void restyle(Look look) {
        InWindow.restyle(look);
        controller.restyled();
    }

    /** The window goes on without it. */
    void leave() {
        timer.stop();
        window.leave();
        controller.closed();
    }
}
