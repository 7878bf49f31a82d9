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
        window = new InWindow(frame, "Settlemark: " + Words.say("profile workshop"), pane, () -> {
            host.stop();
            close.run();
        });
        pane.requestFocusInWindow();
    }

    private void restyle(Look look) {
        InWindow.restyle(look);
        controller.restyled();
    }

    /** The window goes on without it. */
    void leave() {
        window.leave();
    }
}
