package settlemark.ui;

import java.awt.KeyboardFocusManager;
import java.awt.event.ActionEvent;
import java.util.function.Consumer;
import javax.swing.AbstractAction;
import javax.swing.ActionMap;
import javax.swing.InputMap;
import javax.swing.JComponent;
import javax.swing.text.JTextComponent;

/** Binds every deed of a place to its key in the whole window; while something is typed, no letter counts. */
final class Keys {
    private Keys() {}

    static void bind(JComponent root, Deed.Place place, Consumer<Deed> perform) {
        InputMap keys = root.getInputMap(JComponent.WHEN_IN_FOCUSED_WINDOW);
        ActionMap actions = root.getActionMap();
        for (Deed deed : Deed.of(place)) {
            keys.put(deed.stroke(), deed);
            Consumer<Deed> menu = d -> ActMenu.open(root, place, perform);
            actions.put(deed, new Press(deed, deed == Deed.MENU ? menu : perform));
        }
    }

    private static final class Press extends AbstractAction {
        private final Deed deed;
        private final transient Consumer<Deed> perform;

        Press(Deed deed, Consumer<Deed> perform) {
            this.deed = deed;
            this.perform = perform;
        }

        /** No key of these is a letter. */
        private static boolean whileTyping(Deed deed) {
            return switch (deed) {
                case NOW, CLOSE, MENU, SAVE, LANGUAGE -> true;
                default -> false;
            };
        }

        @Override
        public void actionPerformed(ActionEvent event) {
            boolean typing =
                    KeyboardFocusManager.getCurrentKeyboardFocusManager().getFocusOwner() instanceof JTextComponent;
            if (!typing || whileTyping(deed)) {
                perform.accept(deed);
            }
        }
    }
}
