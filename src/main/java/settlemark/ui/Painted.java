package settlemark.ui;

import java.awt.Graphics;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.JComponent;

/** A component that draws itself and says in one sentence what it shows. */
abstract class Painted extends JComponent {
    final Look look;
    private final AccessibleRole role;
    private String sentence = "";

    Painted(Look look, AccessibleRole role) {
        this.look = look;
        this.role = role;
    }

    abstract void draw(Pen pen);

    String sentence() {
        return sentence;
    }

    /** What assistive technology reads; announced when it changes. */
    final void sentence(String newSentence) {
        if (!newSentence.equals(sentence)) {
            String before = sentence;
            sentence = newSentence;
            if (accessibleContext != null) {
                accessibleContext.firePropertyChange(AccessibleContext.ACCESSIBLE_NAME_PROPERTY, before, newSentence);
            }
        }
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Pen pen = new Pen(graphics, look);
        try {
            draw(pen);
        } finally {
            pen.dispose();
        }
    }

    @Override
    public AccessibleContext getAccessibleContext() {
        if (accessibleContext == null) {
            accessibleContext = new Spoken();
        }
        return accessibleContext;
    }

    private final class Spoken extends AccessibleJComponent {
        @Override
        public String getAccessibleName() {
            return sentence;
        }

        @Override
        public AccessibleRole getAccessibleRole() {
            return role;
        }
    }
}
