package settlemark.ui;

import com.formdev.flatlaf.FlatLaf;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import javax.swing.JFrame;
import javax.swing.Timer;

/** The window before there is a session: it looks at what was found ten times a second, and nothing it calls waits. */
final class StartDesk {
    private static final int TICK_MILLIS = 100;

    private final JFrame frame;
    private final StartController controller;
    private final Timer timer;
    private final WindowAdapter closing;

    /**
     * @param review opens the stored sessions in this window
     * @param workshop opens the profile workshop in it
     */
    StartDesk(JFrame frame, Look look, StartHost host, Runnable review, Runnable workshop) {
        this.frame = frame;
        controller = new StartController(look, host, review, workshop, () -> restyle(look));
        closing = new WindowAdapter() {
            @Override
            public void windowClosing(WindowEvent event) {
                host.close();
            }
        };
        timer = new Timer(TICK_MILLIS, e -> controller.tick());
        StartPane pane = controller.pane();
        pane.setPreferredSize(frame.getContentPane().getSize());
        frame.addWindowListener(closing);
        frame.setTitle("Settlemark");
        frame.setContentPane(pane);
        frame.validate();
        timer.start();
    }

    StartController controller() {
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
        controller.closed();
    }
}
