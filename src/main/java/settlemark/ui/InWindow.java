package settlemark.ui;

import com.formdev.flatlaf.FlatLaf;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import javax.swing.JComponent;
import javax.swing.JFrame;

/** A pane that has the window for a while: it hears when the window is closed, and is left without a trace. */
final class InWindow {
    private final JFrame frame;
    private final WindowAdapter closing;
    private Language spoken = Words.language();

    /** @param close the person closed the window */
    InWindow(JFrame frame, String title, JComponent pane, Runnable close) {
        this.frame = frame;
        closing = new WindowAdapter() {
            @Override
            public void windowClosing(WindowEvent event) {
                close.run();
            }
        };
        frame.addWindowListener(closing);
        show(title, pane);
    }

    /** Another pane in the place of the one that was there. */
    void show(String title, JComponent pane) {
        pane.setPreferredSize(frame.getContentPane().getSize());
        frame.setTitle(title);
        frame.setContentPane(pane);
        frame.validate();
    }

    /** The window goes on without it. */
    void leave() {
        frame.removeWindowListener(closing);
    }

    /**
     * After a change of the language, or of light and dark.
     *
     * @param anew makes a pane that speaks the language of now, and shows it
     * @param restyled has the pane that is there painted anew
     */
    void restyle(Look look, Runnable anew, Runnable restyled) {
        if (Words.language() != spoken) {
            spoken = Words.language();
            anew.run();
        } else {
            restyle(look);
            restyled.run();
        }
    }

    /** Light or dark as the look says now, in the library's parts too. */
    static void restyle(Look look) {
        Desktop.laf(look.dark());
        FlatLaf.updateUI();
    }
}
