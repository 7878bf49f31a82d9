package settlemark.ui;

import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;

/** After each keystroke. */
record Typed(Runnable then) implements DocumentListener {
    @Override
    public void insertUpdate(DocumentEvent event) {
        then.run();
    }

    @Override
    public void removeUpdate(DocumentEvent event) {
        then.run();
    }

    @Override
    public void changedUpdate(DocumentEvent event) {
        then.run();
    }
}
