package settlemark.ui;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.awt.event.KeyEvent;
import javax.swing.JButton;
import javax.swing.KeyStroke;

/** A button that paints itself in the house's way: a box, dashed where it can do nothing, a ring while it has the focus. */
abstract class WordButton extends JButton {
    final transient Look look;
    private boolean ringed;

    WordButton(Look look, Runnable pressed) {
        this.look = look;
        setContentAreaFilled(false);
        setBorderPainted(false);
        setFocusPainted(false);
        setRolloverEnabled(true);
        setOpaque(false);
        addActionListener(e -> pressed.run());
        // Enter presses it as Space does.
        getInputMap(WHEN_FOCUSED).put(KeyStroke.getKeyStroke(KeyEvent.VK_ENTER, 0, false), "pressed");
        getInputMap(WHEN_FOCUSED).put(KeyStroke.getKeyStroke(KeyEvent.VK_ENTER, 0, true), "released");
        addFocusListener(new FocusAdapter() {
            @Override
            public void focusGained(FocusEvent event) {
                ring(true);
            }

            @Override
            public void focusLost(FocusEvent event) {
                ring(false);
            }
        });
    }

    private void ring(boolean newRinged) {
        ringed = newRinged;
        repaint();
    }

    /** Distance of the box from the edges, the focus ring's room. */
    static int ringPx() {
        return (int) Look.FOCUS_RING + 2;
    }

    abstract void words(Pen pen, Color ink, Color second);

    /** Whether the box is drawn as one that does something. */
    boolean solid() {
        return isEnabled();
    }

    /** Whether it is filled with ink. */
    boolean filled() {
        return false;
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(look.ipx(220), look.ipx(66));
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Pen pen = new Pen(graphics, look);
        try {
            boolean inverse = filled() != getModel().isPressed();
            Color ground = inverse ? pen.theme().primary() : pen.theme().sheet();
            double ring = ringPx();
            double stroke = getModel().isRollover() && isEnabled() ? 3 : Look.OUTLINE;
            var box = Pen.box(ring, ring, getWidth() - 2 * ring, getHeight() - 2 * ring, stroke, Look.RADIUS);
            if (solid()) {
                pen.fill(ground, box);
                pen.outline(pen.theme().rule(), stroke, box);
            } else {
                pen.fill(pen.theme().fold(), box);
                pen.dashed(pen.theme().rule(), stroke, 6, 4, box);
            }
            if (ringed) {
                pen.outline(
                        pen.theme().series().get(1),
                        Look.FOCUS_RING,
                        Pen.box(0, 0, getWidth(), getHeight(), Look.FOCUS_RING, Look.RADIUS + 3));
            }
            words(
                    pen,
                    inverse ? pen.theme().primaryText() : pen.theme().ink(),
                    inverse ? pen.theme().primaryText() : pen.theme().ink2());
        } finally {
            pen.dispose();
        }
    }
}
