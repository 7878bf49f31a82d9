package settlemark.ui;

import java.awt.Graphics;
import javax.swing.JPanel;

/** What an open column shows inside: one of several, by the kind of step. */
abstract class Face extends JPanel {
    final transient Look look;

    Face(Look look, String name) {
        super(null);
        this.look = look;
        getAccessibleContext().setAccessibleName(name);
    }

    /** @param digits whether large digits may change in this tick, which is at most four times a second */
    abstract void show(Scene scene, boolean digits);

    /** Width below which something would be cut off. */
    abstract int neededWidth();

    /** After a change of theme. */
    void restyle() {}

    @Override
    protected void paintComponent(Graphics graphics) {
        graphics.setColor(look.theme().sheet());
        graphics.fillRect(0, 0, getWidth(), getHeight());
    }
}
