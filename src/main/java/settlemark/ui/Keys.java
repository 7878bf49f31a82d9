package settlemark.ui;

import java.awt.AWTEvent;
import java.awt.EventQueue;
import java.awt.KeyEventDispatcher;
import java.awt.KeyboardFocusManager;
import java.awt.event.ActionEvent;
import java.awt.event.KeyEvent;
import java.util.function.Consumer;
import javax.swing.AbstractAction;
import javax.swing.ActionMap;
import javax.swing.InputMap;
import javax.swing.JComponent;
import javax.swing.text.JTextComponent;
import org.jspecify.annotations.Nullable;

/** Binds every deed of a place to its key in the whole window; while something is typed, no letter counts. */
final class Keys {
    private static final Letter LETTER = new Letter();

    private Keys() {}

    /**
     * The letter of a key that was performed. It comes as an event of its own, on a busy computer only after a field has got
     * the focus that the key asked for, and would be the first letter in it.
     */
    private static final class Letter implements KeyEventDispatcher {
        private boolean expected;
        private boolean listening;

        void expect(@Nullable AWTEvent cause) {
            expected = cause instanceof KeyEvent key && key.getID() == KeyEvent.KEY_PRESSED;
            if (!listening) {
                listening = true;
                KeyboardFocusManager.getCurrentKeyboardFocusManager().addKeyEventDispatcher(this);
            }
        }

        @Override
        public boolean dispatchKeyEvent(KeyEvent event) {
            boolean swallowed = expected && event.getID() == KeyEvent.KEY_TYPED;
            expected = false;
            return swallowed;
        }
    }

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
                LETTER.expect(EventQueue.getCurrentEvent());
                perform.accept(deed);
            }
        }
    }
}
