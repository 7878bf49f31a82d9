package settlemark.ui;

import com.formdev.flatlaf.FlatLaf;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import javax.swing.JFrame;

/** The profile workshop in the window. */
final class WorkshopDesk {
    private final JFrame frame;
    private final WorkshopController controller;
    private final WindowAdapter closing;

    WorkshopDesk(JFrame frame, Look look, WorkshopHost host, Runnable back, Runnable close) {
        this.frame = frame;
        controller = new WorkshopController(look, host, back, close, () -> restyle(look));
        closing = new WindowAdapter() {
            @Override
            public void windowClosing(WindowEvent event) {
                host.stop();
                close.run();
            }
        };
        WorkshopPane pane = controller.pane();
        pane.setPreferredSize(frame.getContentPane().getSize());
        frame.addWindowListener(closing);
        frame.setTitle("Settlemark: " + Words.say("profile workshop"));
        frame.setContentPane(pane);
        frame.validate();
        pane.requestFocusInWindow();
    }

    private void restyle(Look look) {
        Desktop.laf(look.dark());
        FlatLaf.updateUI();
        controller.restyled();
    }

    /** The window goes on without it. */
    void leave() {
        frame.removeWindowListener(closing);
    }
}
