package settlemark.ui;

import javax.swing.JFrame;

/** The profile workshop in the window. */
final class WorkshopDesk {
    private final WorkshopController controller;
    private final InWindow window;

    /**
     * @param back goes back to where the workshop was opened from
     * @param close the person closed the window
     */
    WorkshopDesk(JFrame frame, Look look, WorkshopHost host, Runnable back, Runnable close) {
        controller = new WorkshopController(look, host, back, close, () -> restyle(look));
        WorkshopPane pane = controller.pane();
        window = new InWindow(frame, title(), pane, () -> {
            host.stop();
            close.run();
        });
        pane.requestFocusInWindow();
    }

    private static String title() {
        return "Settlemark: " + Words.say("profile workshop");
    }

    private void restyle(Look look) {
        window.restyle(look, () -> controller.speakAnew(pane -> window.show(title(), pane)), controller::restyled);
    }

    WorkshopController controller() {
        return controller;
    }

    /** The window goes on without it. */
    void leave() {
        window.leave();
    }
}
