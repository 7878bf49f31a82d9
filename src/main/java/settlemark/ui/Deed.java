package settlemark.ui;

import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.util.List;
import java.util.stream.Stream;
import javax.swing.KeyStroke;

/** Everything that a key or a button does, in the order of the key list. A key may mean something else in another place. */
enum Deed {
    PRIMARY(Words.key("Space"), Words.key("the large button"), key(KeyEvent.VK_SPACE)),
    TAKE_NOW(
            Words.key("Shift Space"),
            Words.key("take the reading now, with a reason"),
            key(KeyEvent.VK_SPACE, InputEvent.SHIFT_DOWN_MASK)),
    PRESSURES("P", Words.key("pressures first, temperatures later"), key(KeyEvent.VK_P)),
    ADJUST("A", Words.key("back to adjusting"), key(KeyEvent.VK_A)),
    FAR_VIEW("F", Words.key("far view, to be read from 3 m"), key(KeyEvent.VK_F)),
    NOTE("N", Words.key("write a note"), key(KeyEvent.VK_N)),
    SKIP("S", Words.key("skip this step, with a reason"), key(KeyEvent.VK_S)),
    REPEAT("R", Words.key("do a step again; clocking: drop the run"), key(KeyEvent.VK_R)),
    LEFT(Words.key("Left"), Words.key("column to the left"), key(KeyEvent.VK_LEFT)),
    RIGHT(Words.key("Right"), Words.key("column to the right"), key(KeyEvent.VK_RIGHT)),
    FIRST(Words.key("Home"), Words.key("first column"), key(KeyEvent.VK_HOME)),
    LAST(Words.key("End"), Words.key("last column"), key(KeyEvent.VK_END)),
    SEEN("E", Words.key("I have seen the safety notice"), key(KeyEvent.VK_E)),
    NOW(Words.key("Esc"), Words.key("back to now"), key(KeyEvent.VK_ESCAPE)),
    ENTER(Words.key("Enter"), Words.key("finish what is typed; clocking: end the run"), key(KeyEvent.VK_ENTER)),
    UNMARK(
            Words.key("Ctrl Z"),
            Words.key("clocking: the last press was none"),
            key(KeyEvent.VK_Z, InputEvent.CTRL_DOWN_MASK)),
    DIAL("D", Words.key("clocking: the meter's dial"), key(KeyEvent.VK_D)),
    HEAT("H", Words.key("clocking: the gas supplier's heating value"), key(KeyEvent.VK_H)),
    SETTINGS("C", Words.key("what counts as settled"), key(KeyEvent.VK_C)),
    INSTRUMENT("I", Words.key("a probe's instrument, by serial number"), key(KeyEvent.VK_I)),
    TICK_1("1", Words.key("first tick of the list"), key(KeyEvent.VK_1)),
    TICK_2("2", Words.key("second tick"), key(KeyEvent.VK_2)),
    TICK_3("3", Words.key("third tick"), key(KeyEvent.VK_3)),
    SCREW_UP(Words.key("Up"), Words.key("demo: screw 1/20 turn in"), key(KeyEvent.VK_UP)),
    SCREW_DOWN(Words.key("Down"), Words.key("demo: screw 1/20 turn out"), key(KeyEvent.VK_DOWN)),
    SCREW_UP_MORE(
            Words.key("Shift Up"),
            Words.key("demo: screw 1/4 turn in"),
            key(KeyEvent.VK_UP, InputEvent.SHIFT_DOWN_MASK)),
    SCREW_DOWN_MORE(
            Words.key("Shift Down"),
            Words.key("demo: screw 1/4 turn out"),
            key(KeyEvent.VK_DOWN, InputEvent.SHIFT_DOWN_MASK)),
    SPEED("X", Words.key("demo: faster, slower"), key(KeyEvent.VK_X)),
    LOOK("L", Words.key("before a job: look for probes again"), key(KeyEvent.VK_L)),
    PORT("O", Words.key("before a job: name a port by hand"), key(KeyEvent.VK_O)),
    PAIR("P", Words.key("before a job: pair a Bluetooth probe"), key(KeyEvent.VK_P)),
    FIND("/", Words.key("find a session"), KeyStroke.getKeyStroke('/')),
    READING_BEFORE("J", Words.key("to the reading before"), key(KeyEvent.VK_J)),
    READING_NEXT("K", Words.key("to the next reading"), key(KeyEvent.VK_K)),
    GAP_NEXT("G", Words.key("to the next gap"), key(KeyEvent.VK_G)),
    NOTE_NEXT(Words.key("Shift N"), Words.key("to the next note"), key(KeyEvent.VK_N, InputEvent.SHIFT_DOWN_MASK)),
    PLAY("P", Words.key("play, stop"), key(KeyEvent.VK_P)),
    PACE("X", Words.key("play faster, slower: 1 to 100 times"), key(KeyEvent.VK_X)),
    BACK_A_LITTLE(",", Words.key("back by a hundredth of what is shown"), KeyStroke.getKeyStroke(',')),
    ON_A_LITTLE(".", Words.key("on by a hundredth of what is shown"), KeyStroke.getKeyStroke('.')),
    BACK("<", Words.key("back by a tenth of what is shown"), KeyStroke.getKeyStroke('<')),
    ON(">", Words.key("on by a tenth of what is shown"), KeyStroke.getKeyStroke('>')),
    ZOOM_IN("+", Words.key("half as much time"), KeyStroke.getKeyStroke('+')),
    ZOOM_OUT("\u2212", Words.key("twice as much time"), KeyStroke.getKeyStroke('-')),
    ZOOM_ALL("0", Words.key("the whole session"), key(KeyEvent.VK_0)),
    LAY_OVER("O", Words.key("lay another reading or session under this one"), key(KeyEvent.VK_O)),
    WHAT_IF("I", Words.key("what if the settled rule were another"), key(KeyEvent.VK_I)),
    LIMITS("L", Words.key("hold the job against other limits"), key(KeyEvent.VK_L)),
    EXPORT_VIEW("E", Words.key("keep what is seen as a picture or a table"), key(KeyEvent.VK_E)),
    VISITS("B", Words.key("the visits before, and what is now"), key(KeyEvent.VK_B)),
    JUDGE("V", Words.key("accept or return the sealed record"), key(KeyEvent.VK_V)),
    WORKSHOP("W", Words.key("before a job: make a profile from frames"), key(KeyEvent.VK_W)),
    OPEN_FILE("O", Words.key("frames from a file"), key(KeyEvent.VK_O)),
    LISTEN("H", Words.key("listen to a port, stop listening"), key(KeyEvent.VK_H)),
    START_BYTES("B", Words.key("the picked bytes begin each frame"), key(KeyEvent.VK_B)),
    ADD_FIELD("F", Words.key("the picked bytes are a field"), key(KeyEvent.VK_F)),
    REMOVE_FIELD(Words.key("Delete"), Words.key("take the picked field away"), key(KeyEvent.VK_DELETE)),
    TAKE_BACK(
            Words.key("Ctrl Z"), Words.key("take the last change back"), key(KeyEvent.VK_Z, InputEvent.CTRL_DOWN_MASK)),
    NAME_DEVICE("K", Words.key("key of the device"), key(KeyEvent.VK_K)),
    SAVE(Words.key("Ctrl S"), Words.key("save the profile"), key(KeyEvent.VK_S, InputEvent.CTRL_DOWN_MASK)),
    ROW_UP(Words.key("Up"), Words.key("the row above"), key(KeyEvent.VK_UP)),
    ROW_DOWN(Words.key("Down"), Words.key("the row below"), key(KeyEvent.VK_DOWN)),
    ROW_FIRST(Words.key("Home"), Words.key("the first row"), key(KeyEvent.VK_HOME)),
    ROW_LAST(Words.key("End"), Words.key("the last row"), key(KeyEvent.VK_END)),
    PAGE_NEXT(Words.key("Page down"), Words.key("the next page of rows"), key(KeyEvent.VK_PAGE_DOWN)),
    PAGE_BEFORE(Words.key("Page up"), Words.key("the page of rows before"), key(KeyEvent.VK_PAGE_UP)),
    SOUND("M", Words.key("sound on or off"), key(KeyEvent.VK_M)),
    UNITS("U", Words.key("other units: inH\u2082O, mbar or Pa; \u00b0F, \u00b0C"), key(KeyEvent.VK_U)),
    LANGUAGE(Words.key("Ctrl L"), Words.key("another language"), key(KeyEvent.VK_L, InputEvent.CTRL_DOWN_MASK)),
    THEME("T", Words.key("light or dark"), key(KeyEvent.VK_T)),
    SIZE("Z", Words.key("measure the screen once with a ruler, so that digits are 20 mm high"), key(KeyEvent.VK_Z)),
    MENU("F10", Words.key("menu of everything"), key(KeyEvent.VK_F10)),
    KEYS("?", Words.key("this list"), KeyStroke.getKeyStroke('?')),
    CLOSE(Words.key("Ctrl W"), Words.key("close the window"), key(KeyEvent.VK_W, InputEvent.CTRL_DOWN_MASK));

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
        return Words.told(label);
    }

    String words() {
        return Words.told(words);
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
        WORKSHOP,
        /** A log of many channels. */
        BENCH
    }

    /** What can be asked for in a place, in the order of its key list. */
    static List<Deed> of(Place place) {
        return Stream.of(values()).filter(d -> d.in(place)).toList();
    }

    private boolean in(Place place) {
        return switch (this) {
            case PRIMARY -> place != Place.BENCH;
            case ROW_UP, ROW_DOWN, ROW_FIRST, ROW_LAST, PAGE_NEXT, PAGE_BEFORE -> place == Place.BENCH;
            case NOW, THEME, LANGUAGE, MENU, KEYS, CLOSE -> true;
            case LEFT, RIGHT -> place != Place.WORKSHOP;
            case NOTE, VISITS -> place == Place.JOB || place == Place.REVIEW;
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
                    LIMITS,
                    EXPORT_VIEW,
                    JUDGE -> place == Place.REVIEW;
            case UNITS -> place == Place.JOB || place == Place.REVIEW || place == Place.BENCH;
            case FIRST, LAST -> place == Place.JOB || place == Place.REVIEW;
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
