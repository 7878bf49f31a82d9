package settlemark.ui;

import java.awt.Component;
import java.awt.Container;
import java.awt.KeyboardFocusManager;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.swing.SwingUtilities;
import javax.swing.text.JTextComponent;
import org.jspecify.annotations.Nullable;

/**
 * What a person has typed in a pane and where they are in it, for the pane that is made anew in its place. A part is known
 * by its class and by how many of that class come before it.
 */
final class TakenOver {
    private final Map<Place, Text> texts = new HashMap<>();
    private @Nullable Place focus;

    private record Place(Class<?> of, int before) {
        String key() {
            return of.getName() + "#" + before;
        }
    }

    private record Text(String text, int caret) {}

    TakenOver(Container before) {
        Component owner = KeyboardFocusManager.getCurrentKeyboardFocusManager().getFocusOwner();
        places(before).forEach((place, part) -> {
            if (part instanceof JTextComponent field && field.isEditable()) {
                texts.put(place, new Text(field.getText(), field.getCaretPosition()));
            }
            if (part == owner) {
                focus = place;
            }
        });
    }

    /** Puts it into the pane that has its place now, which must be shown already. */
    void into(Container now) {
        Map<Place, Component> places = places(now);
        texts.forEach((place, text) -> {
            if (places.get(place) instanceof JTextComponent field
                    && !field.getText().equals(text.text())) {
                field.setText(text.text());
            }
        });
        Component owner = Optional.ofNullable(focus).map(places::get).orElse(now);
        Text text = focus == null ? null : texts.get(focus);
        if (text != null && owner instanceof JTextComponent field) {
            field.addFocusListener(new CursorBack(field, text.caret()));
        }
        SwingUtilities.invokeLater(
                () -> (owner.isShowing() && owner.isFocusable() ? owner : now).requestFocusInWindow());
    }

    /** What is typed in the fields of a pane that are shown, by field; what is empty is left out. */
    static Map<String, String> texts(Container pane) {
        Map<String, String> texts = new HashMap<>();
        places(pane).forEach((place, part) -> {
            if (part instanceof JTextComponent field
                    && field.isEditable()
                    && !field.getText().isEmpty()
                    && isOpen(field, pane)) {
                texts.put(place.key(), field.getText());
            }
        });
        return texts;
    }

    private static boolean isOpen(Component part, Container pane) {
        Component at = part;
        while (at != null && at != pane) {
            if (!at.isVisible()) {
                return false;
            }
            at = at.getParent();
        }
        return true;
    }

    /** Types again what was typed in such a pane before the program ended. */
    static void type(Map<String, String> texts, Container pane) {
        places(pane).forEach((place, part) -> {
            String text = texts.get(place.key());
            if (text != null && part instanceof JTextComponent field && field.isEditable() && isOpen(field, pane)) {
                field.setText(text);
                field.addFocusListener(new CursorBack(field, text.length()));
            }
        });
    }

    /** A text that gets the focus for the first time selects all that it holds, and the next letter would replace it. */
    private static final class CursorBack extends FocusAdapter {
        private final JTextComponent field;
        private final int caret;

        CursorBack(JTextComponent field, int caret) {
            this.field = field;
            this.caret = caret;
        }

        @Override
        public void focusGained(FocusEvent event) {
            field.removeFocusListener(this);
            SwingUtilities.invokeLater(() ->
                    field.setCaretPosition(Math.min(caret, field.getDocument().getLength())));
        }
    }

    private static Map<Place, Component> places(Container in) {
        Map<Place, Component> places = new HashMap<>();
        Map<Class<?>, Integer> counted = new HashMap<>();
        for (Component part : parts(in)) {
            places.put(new Place(part.getClass(), counted.merge(part.getClass(), 1, Integer::sum)), part);
        }
        return places;
    }

    private static List<Component> parts(Container in) {
        List<Component> all = new ArrayList<>();
        for (Component part : in.getComponents()) {
            all.add(part);
            if (part instanceof Container inner) {
                all.addAll(parts(inner));
            }
        }
        return all;
    }
}
