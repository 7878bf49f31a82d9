package settlemark.ui;

import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.util.List;
import java.util.stream.Stream;
import javax.swing.KeyStroke;

/** Everything that a key or a button does, in the order of the key list. A key may mean something else in another place. */
enum Deed {
    PRIMARY("Space", "the large button", key(KeyEvent.VK_SPACE)),
    TAKE_NOW("Shift Space", "take the reading now, with a reason", key(KeyEvent.VK_SPACE, InputEvent.SHIFT_DOWN_MASK)),
    ADJUST("A", "back to adjusting", key(KeyEvent.VK_A)),
    FAR_VIEW("F", "far view, to be read from 3 m", key(KeyEvent.VK_F)),
    NOTE("N", "write a note", key(KeyEvent.VK_N)),
    SKIP("S", "skip this step, with a reason", key(KeyEvent.VK_S)),
    REPEAT("R", "do a finished step again, beside the old one; clocking: drop this run", key(KeyEvent.VK_R)),
    LEFT("Left", "column to the left", key(KeyEvent.VK_LEFT)),
    RIGHT("Right", "column to the right", key(KeyEvent.VK_RIGHT)),
    FIRST("Home", "first column", key(KeyEvent.VK_HOME)),
    LAST("End", "last column", key(KeyEvent.VK_END)),
    SEEN("E", "I have seen the safety notice", key(KeyEvent.VK_E)),
    NOW("Esc", "back to now", key(KeyEvent.VK_ESCAPE)),
    ENTER("Enter", "finish what is typed; clocking: end the run", key(KeyEvent.VK_ENTER)),
    UNMARK("Ctrl Z", "clocking: the last press was none", key(KeyEvent.VK_Z, InputEvent.CTRL_DOWN_MASK)),
    DIAL("D", "clocking: the meter's dial", key(KeyEvent.VK_D)),
    HEAT("H", "clocking: the gas supplier's heating value", key(KeyEvent.VK_H)),
    TICK_1("1", "first tick of the closing list", key(KeyEvent.VK_1)),
    TICK_2("2", "second tick", key(KeyEvent.VK_2)),
    TICK_3("3", "third tick", key(KeyEvent.VK_3)),
    SCREW_UP("Up", "demo: screw 1/20 turn in", key(KeyEvent.VK_UP)),
    SCREW_DOWN("Down", "demo: screw 1/20 turn out", key(KeyEvent.VK_DOWN)),
    SCREW_UP_MORE("Shift Up", "demo: screw 1/4 turn in", key(KeyEvent.VK_UP, InputEvent.SHIFT_DOWN_MASK)),
    SCREW_DOWN_MORE("Shift Down", "demo: screw 1/4 turn out", key(KeyEvent.VK_DOWN, InputEvent.SHIFT_DOWN_MASK)),
    SPEED("X", "demo: faster, slower", key(KeyEvent.VK_X)),
    LOOK("L", "before a job: look for probes again", key(KeyEvent.VK_L)),
    PORT("O", "before a job: name a port by hand", key(KeyEvent.VK_O)),
    PAIR("P", "before a job: pair a Bluetooth probe", key(KeyEvent.VK_P)),
    FIND("/", "find a session", KeyStroke.getKeyStroke('/')),
    READING_BEFORE("J", "to the reading before", key(KeyEvent.VK_J)),
    READING_NEXT("K", "to the next reading", key(KeyEvent.VK_K)),
    GAP_NEXT("G", "to the next gap", key(KeyEvent.VK_G)),
    NOTE_NEXT("Shift N", "to the next note", key(KeyEvent.VK_N, InputEvent.SHIFT_DOWN_MASK)),
    PLAY("P", "play, stop", key(KeyEvent.VK_P)),
    PACE("X", "play faster, slower: 1 to 100 times", key(KeyEvent.VK_X)),
    BACK_A_LITTLE(",", "back by a hundredth of what is shown", KeyStroke.getKeyStroke(',')),
    ON_A_LITTLE(".", "on by a hundredth of what is shown", KeyStroke.getKeyStroke('.')),
    BACK("<", "back by a tenth of what is shown", KeyStroke.getKeyStroke('<')),
    ON(">", "on by a tenth of what is shown", KeyStroke.getKeyStroke('>')),
    ZOOM_IN("+", "half as much time", KeyStroke.getKeyStroke('+')),
    ZOOM_OUT("\u2212", "twice as much time", KeyStroke.getKeyStroke('-')),
    ZOOM_ALL("0", "the whole session", key(KeyEvent.VK_0)),
    LAY_OVER("O", "lay another reading or session under this one", key(KeyEvent.VK_O)),
    WHAT_IF("I", "what if the settled rule were another", key(KeyEvent.VK_I)),
    EXPORT_VIEW("E", "keep what is seen as a picture or a table", key(KeyEvent.VK_E)),
    WORKSHOP("W", "before a job: make a profile from frames", key(KeyEvent.VK_W)),
    OPEN_FILE("O", "frames from a file", key(KeyEvent.VK_O)),
    LISTEN("H", "listen to a port, stop listening", key(KeyEvent.VK_H)),
    START_BYTES("B", "the picked bytes begin each frame", key(KeyEvent.VK_B)),
    ADD_FIELD("F", "the picked bytes are a field", key(KeyEvent.VK_F)),
    REMOVE_FIELD("Delete", "take the picked field away", key(KeyEvent.VK_DELETE)),
    TAKE_BACK("Ctrl Z", "take the last change back", key(KeyEvent.VK_Z, InputEvent.CTRL_DOWN_MASK)),
    NAME_DEVICE("K", "key of the device", key(KeyEvent.VK_K)),
    SAVE("Ctrl S", "save the profile", key(KeyEvent.VK_S, InputEvent.CTRL_DOWN_MASK)),
    SOUND("M", "sound on or off", key(KeyEvent.VK_M)),
    UNITS("U", "other units: inches of water and \u00b0F, mbar or Pa and \u00b0C", key(KeyEvent.VK_U)),
    THEME("T", "light or dark", key(KeyEvent.VK_T)),
    SIZE("Z", "measure the screen once with a ruler, so that digits are 20 mm high", key(KeyEvent.VK_Z)),
    MENU("F10", "menu of everything", key(KeyEvent.VK_F10)),
    KEYS("?", "this list", KeyStroke.getKeyStroke('?')),
    CLOSE("Ctrl W", "close the window", key(KeyEvent.VK_W, InputEvent.CTRL_DOWN_MASK));

    private final String label;
    private final String words;
    private final KeyStroke stroke;

    Deed(String label, String words, KeyStroke stroke) {
        this.label = label;
        this.words = words;
        this.stroke = stroke;
    }

    /** As printed on a button. */
    String label() {
        return label;
    }

    String words() {
        return words;
    }

    KeyStroke stroke() {
        return stroke;
    }

    /** True where it only exists while the rig is played with. */
    boolean demoOnly() {
        return switch (this) {
            case SCREW_UP, SCREW_DOWN, SCREW_UP_MORE, SCREW_DOWN_MORE, SPEED -> true;
            default -> false;
        };
    }

    /** Where a key counts. */
    enum Place {
        JOB,
        START,
        REVIEW,
        WORKSHOP
    }

    /** What can be asked for in a place, in the order of its key list. */
    static List<Deed> of(Place place) {
        return Stream.of(values()).filter(d -> d.in(place)).toList();
    }

    private boolean in(Place place) {
        return switch (this) {
            case PRIMARY, NOW, THEME, MENU, KEYS, CLOSE -> true;
            case LEFT, RIGHT, NOTE -> place != Place.WORKSHOP;
            case OPEN_FILE, LISTEN, START_BYTES, ADD_FIELD, REMOVE_FIELD, TAKE_BACK, NAME_DEVICE, SAVE ->
                place == Place.WORKSHOP;
            case TICK_1, TICK_2, TICK_3, SCREW_UP, SCREW_DOWN -> place == Place.JOB || place == Place.START;
            case LOOK, PORT, PAIR, SIZE, WORKSHOP -> place == Place.START;
            case FIND,
                    READING_BEFORE,
                    READING_NEXT,
                    GAP_NEXT,
                    NOTE_NEXT,
                    PLAY,
                    PACE,
                    BACK_A_LITTLE,
                    ON_A_LITTLE,
                    BACK,
                    ON,
                    ZOOM_IN,
                    ZOOM_OUT,
                    ZOOM_ALL,
                    LAY_OVER,
                    WHAT_IF,
                    EXPORT_VIEW -> place == Place.REVIEW;
            case UNITS, FIRST, LAST -> place == Place.JOB || place == Place.REVIEW;
            default -> place == Place.JOB;
        };
    }

    private static KeyStroke key(int code) {
        return KeyStroke.getKeyStroke(code, 0);
    }

    private static KeyStroke key(int code, int modifiers) {
        return KeyStroke.getKeyStroke(code, modifiers);
    }
}
