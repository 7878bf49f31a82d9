package settlemark.ui;

import java.awt.Component;
import java.awt.Container;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import javax.swing.AbstractButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JTextField;
import javax.swing.SwingUtilities;
import javax.swing.text.JTextComponent;

/**
 * Walks through everything that can be seen in a window and says what is wrong with it: what can have the focus and has
 * no name for a screen reader, a field without its label, words that are cut off or painted over each other.
 */
public final class WindowWalk {
    /** Rounding of places to whole pixels. */
    private static final double ROUNDING = 1.5;

    private WindowWalk() {}

    /** What is wrong below and including a component; on the event thread. */
    public static List<String> findings(Component root) {
        List<String> findings = new ArrayList<>();
        for (Component component : Painting.visible(root)) {
            if (component instanceof JComponent part && part.getWidth() > 0 && part.getHeight() > 0) {
                named(part, findings);
                labelled(part, findings);
                label(part, findings);
            }
        }
        Painting.visible(root, DigitField.class).forEach(d -> digits(d, findings));
        List<Rectangle2D> typed = typed(root);
        texts(root).stream()
                .filter(t -> typed.stream().noneMatch(p -> p.contains(t.within())))
                .forEach(t -> cutOff(t, findings));
        overPainted(texts(root), findings);
        return findings;
    }

    /** Large digits are drawn as shapes and not heard as words. */
    private static void digits(DigitField field, List<String> findings) {
        double wide = field.textWidth();
        double left = field.getX() + field.getWidth() - wide;
        boolean whole = wide <= field.getWidth() + ROUNDING
                && left >= -ROUNDING
                && field.getX() + field.getWidth() <= field.getParent().getWidth() + ROUNDING;
        if (!whole) {
            findings.add("digits cut off: " + field.sentence() + ", " + Math.round(wide) + " px wide in "
                    + field.getWidth() + " at " + field.getX() + " of "
                    + field.getParent().getWidth());
        }
    }

    /** What is typed moves along in its field. */
    private static List<Rectangle2D> typed(Component root) {
        return Painting.visible(root, JTextComponent.class).stream()
                .map(t -> {
                    Rectangle2D place = SwingUtilities.convertRectangle(t.getParent(), t.getBounds(), root);
                    return (Rectangle2D) new Rectangle2D.Double(
                            place.getX() - 1, place.getY() - 1, place.getWidth() + 2, place.getHeight() + 2);
                })
                .toList();
    }

    static List<TextRecorder.Text> texts(Component root) {
        TextRecorder recorder = new TextRecorder();
        recorder.setClip(0, 0, root.getWidth(), root.getHeight());
        root.printAll(recorder);
        return recorder.texts();
    }

    private static void named(JComponent part, List<String> findings) {
        boolean focusable = part.isFocusable()
                && part.isEnabled()
                && (part instanceof AbstractButton
                        || part instanceof JTextComponent
                        || part instanceof JList
                        || part instanceof Painted);
        String name = part.getAccessibleContext() == null
                ? null
                : part.getAccessibleContext().getAccessibleName();
        if (focusable && (name == null || name.isBlank())) {
            findings.add("no name: " + path(part));
        }
    }

    private static void labelled(JComponent part, List<String> findings) {
        // A field may say by itself what to type, as long as it is empty; then its name says it too.
        if (part instanceof JTextField text
                && text.isEditable()
                && text.getClientProperty("labeledBy") == null
                && text.getClientProperty("JTextField.placeholderText") == null) {
            findings.add("no label is for it: " + path(part));
        }
    }

    private static void label(JComponent part, List<String> findings) {
        String text = part instanceof JLabel label
                ? label.getText()
                : part instanceof AbstractButton button && !(part instanceof ActButton) ? button.getText() : "";
        if (text == null || text.isBlank()) {
            return;
        }
        if (part.getPreferredSize().width > part.getWidth() + ROUNDING
                || part.getPreferredSize().height > part.getHeight() + ROUNDING) {
            findings.add(String.format(
                    Locale.ROOT,
                    "cut off: \"%s\" wants %d x %d, has %d x %d: %s",
                    text,
                    part.getPreferredSize().width,
                    part.getPreferredSize().height,
                    part.getWidth(),
                    part.getHeight(),
                    path(part)));
        }
    }

    private static void cutOff(TextRecorder.Text text, List<String> findings) {
        Rectangle2D in = text.within();
        Rectangle2D at = text.place();
        double out = Math.max(
                Math.max(in.getMinX() - at.getMinX(), at.getMaxX() - in.getMaxX()),
                Math.max(in.getMinY() - at.getMinY(), at.getMaxY() - in.getMaxY()));
        boolean gone = !in.intersects(at);
        if (out > ROUNDING && !gone) {
            findings.add(String.format(
                    Locale.ROOT, "cut off by %.0f px: \"%s\" at %s within %s", out, text.words(), at(at), at(in)));
        }
    }

    private static void overPainted(List<TextRecorder.Text> texts, List<String> findings) {
        for (int i = 0; i < texts.size(); i++) {
            for (int k = i + 1; k < texts.size(); k++) {
                Rectangle2D both =
                        texts.get(i).place().createIntersection(texts.get(k).place());
                boolean same =
                        Objects.equals(texts.get(i).within(), texts.get(k).within());
                if (same && both.getWidth() > 2 && both.getHeight() > 3) {
                    findings.add("one over the other: \"" + texts.get(i).words() + "\" and \""
                            + texts.get(k).words() + "\" at " + at(both));
                }
            }
        }
    }

    private static String at(Rectangle2D place) {
        return String.format(
                Locale.ROOT, "%.0f,%.0f %.0fx%.0f", place.getX(), place.getY(), place.getWidth(), place.getHeight());
    }

    private static String path(Component part) {
        StringBuilder path = new StringBuilder();
        for (Container up = part.getParent(); up != null && path.length() < 60; up = up.getParent()) {
            path.append(" in ").append(up.getClass().getSimpleName());
        }
        return part.getClass().getSimpleName() + path;
    }
}
