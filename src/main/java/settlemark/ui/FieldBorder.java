package settlemark.ui;

import java.awt.Component;
import java.awt.Graphics;
import java.awt.Insets;
import javax.swing.border.AbstractBorder;

/** The edge of a field that is typed in: ink, and the focus ring while it has the focus. */
final class FieldBorder extends AbstractBorder {
    private static final double PLAIN = 2;

    private final transient Look look;

    FieldBorder(Look look) {
        this.look = look;
    }

    @Override
    public void paintBorder(Component c, Graphics graphics, int x, int y, int width, int height) {
        Pen pen = new Pen(graphics, look);
        try {
            boolean ring = c.isFocusOwner();
            double stroke = ring ? Look.FOCUS_RING : PLAIN;
            pen.outline(
                    ring ? pen.theme().series().get(1) : pen.theme().ink(),
                    stroke,
                    Pen.box(x, y, width, height, stroke, 0));
        } finally {
            pen.dispose();
        }
    }

    @Override
    public Insets getBorderInsets(Component c, Insets insets) {
        int side = look.ipx(10) + (int) PLAIN;
        insets.set(2 + (int) PLAIN, side, 2 + (int) PLAIN, side);
        return insets;
    }
}
