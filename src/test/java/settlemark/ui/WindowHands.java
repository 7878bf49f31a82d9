package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.AWTEvent;
import java.awt.AWTException;
import java.awt.Component;
import java.awt.EventQueue;
import java.awt.KeyboardFocusManager;
import java.awt.Point;
import java.awt.Rectangle;
import java.awt.Robot;
import java.awt.Toolkit;
import java.awt.Window;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.awt.event.MouseEvent;
import java.awt.event.WindowEvent;
import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import javax.imageio.ImageIO;
import javax.swing.JDialog;
import javax.swing.JFrame;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.text.JTextComponent;
import settlemark.link.RadioBench;

/**
 * A person's hands at the real window: the pointer is moved and pressed where a component is on the screen, keys are
 * typed as on a keyboard. Components are found by what a screen reader calls them.
 */
public final class WindowHands {
    /** A window that goes at the press of a key hears nothing of its release. */
    private static final long HEARD_WITHIN_MILLIS = 2000;

    private static final AtomicInteger KEYS_UP = new AtomicInteger();
    private static final AtomicInteger BUTTONS_UP = new AtomicInteger();

    static {
        Toolkit.getDefaultToolkit()
                .addAWTEventListener(
                        event -> {
                            if (event.getID() == KeyEvent.KEY_RELEASED) {
                                KEYS_UP.incrementAndGet();
                            } else if (event.getID() == MouseEvent.MOUSE_RELEASED) {
                                BUTTONS_UP.incrementAndGet();
                            }
                        },
                        AWTEvent.KEY_EVENT_MASK | AWTEvent.MOUSE_EVENT_MASK);
    }

    private final Robot robot;

    public WindowHands() throws AWTException {
        robot = new Robot();
        robot.setAutoDelay(5);
    }

    static <T> T onEdt(Callable<T> work) {
        return DeskPaneTest.onEdt(work);
    }

    /** All that can be seen now, by its accessible name. */
    public List<String> seen() {
        return onEdt(() ->
                all().stream().map(WindowHands::name).filter(n -> !n.isBlank()).toList());
    }

    private static List<Component> all() {
        List<Component> all = new ArrayList<>();
        for (Window window : Window.getWindows()) {
            if (window instanceof JFrame frame && frame.isShowing()) {
                all.addAll(Painting.visible(frame.getContentPane()));
            }
            assertThat(window).isNotInstanceOf(JDialog.class);
        }
        return all;
    }

    private static String name(Component component) {
        String name = component.getAccessibleContext() == null
                ? ""
                : component.getAccessibleContext().getAccessibleName();
        return name == null ? "" : name;
    }

    private static List<Component> named(String begin) {
        return all().stream()
                .filter(c -> !(c instanceof JLabel))
                .filter(c -> name(c).startsWith(begin))
                .toList();
    }

    /** Waits until something can be seen whose name begins so. */
    public void awaitSeen(String begin) {
        await(begin, () -> !onEdt(() -> named(begin)).isEmpty());
    }

    /** Waits until some name contains these words. */
    public void awaitWords(String words) {
        await(words, () -> seen().stream().anyMatch(n -> n.contains(words)));
    }

    private void await(String what, BooleanSupplier condition) {
        try {
            RadioBench.await(what, condition);
        } catch (AssertionError e) {
            throw new AssertionError(e.getMessage() + "; to be seen is " + seen(), e);
        }
    }

    /** Presses the first component whose name begins so, in its middle. */
    public void click(String begin) {
        awaitSeen(begin);
        Point at = onEdt(() -> {
            Component component = named(begin).get(0);
            Point corner = component.getLocationOnScreen();
            return new Point(corner.x + component.getWidth() / 2, corner.y + component.getHeight() / 2);
        });
        press(at);
    }

    /** Presses at a distance from the left edge of a component and drags to another, below its middle. */
    void dragAcross(String begin, double fromX, double toX) {
        awaitSeen(begin);
        Point corner = onEdt(() -> named(begin).get(0).getLocationOnScreen());
        int high = onEdt(() -> named(begin).get(0).getHeight()) / 2;
        int before = BUTTONS_UP.get();
        robot.mouseMove((int) (corner.x + fromX), corner.y + high);
        robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
        robot.mouseMove((int) (corner.x + toX), corner.y + high);
        robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
        heard(BUTTONS_UP, before);
    }

    /** Presses a row of the list that is open. */
    public void choose(String begin) {
        Point[] at = new Point[1];
        RadioBench.await("choice " + begin, () -> {
            at[0] = onEdt(() -> row(begin));
            return at[0] != null;
        });
        press(at[0]);
    }

    private static @org.jspecify.annotations.Nullable Point row(String begin) {
        for (Component component : all()) {
            if (component instanceof JList<?> list && list.isShowing()) {
                for (int i = 0; i < list.getModel().getSize(); i++) {
                    if (String.valueOf(list.getModel().getElementAt(i)).startsWith(begin)) {
                        list.ensureIndexIsVisible(i);
                        var cell = list.getCellBounds(i, i);
                        Point corner = list.getLocationOnScreen();
                        return new Point(corner.x + cell.x + 60, corner.y + cell.y + cell.height / 2);
                    }
                }
            }
        }
        return null;
    }

    /** Robot's own wait for idleness hangs for minutes where the display loses its answer. */
    private void idle() {
        Toolkit.getDefaultToolkit().sync();
        robot.delay(30);
        onEdt(() -> true);
    }

    /** Waits until the event thread has had what was typed or pressed: on a busy machine that takes its time. */
    private void heard(AtomicInteger counter, int before) {
        long end = System.nanoTime() + HEARD_WITHIN_MILLIS * 1_000_000;
        idle();
        while (counter.get() == before && System.nanoTime() < end) {
            idle();
        }
    }

    private void press(Point at) {
        int before = BUTTONS_UP.get();
        robot.mouseMove(at.x, at.y);
        robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
        robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
        heard(BUTTONS_UP, before);
    }

    /** Types a key such as {@code VK_SPACE}. */
    public void key(int code) {
        int before = KEYS_UP.get();
        robot.keyPress(code);
        robot.keyRelease(code);
        heard(KEYS_UP, before);
    }

    /** Waits until the list of choices has the keyboard. */
    void awaitListFocused() {
        await(
                "a list with the keyboard",
                () -> onEdt(() -> all().stream().anyMatch(c -> c instanceof JList<?> && c.isFocusOwner())));
    }

    /** Waits until nothing can be seen whose name begins so. */
    void awaitGone(String begin) {
        await("no " + begin, () -> onEdt(() -> named(begin)).isEmpty());
    }

    /** Whether the menu bar is there. */
    static boolean menuShown() {
        return onEdt(() -> {
            for (Window window : Window.getWindows()) {
                if (window instanceof JFrame frame && frame.isShowing() && frame.getJMenuBar() != null) {
                    return true;
                }
            }
            return false;
        });
    }

    /** Ctrl Z. */
    void undo() {
        control(KeyEvent.VK_Z);
    }

    /** A key while Ctrl is held. */
    public void control(int code) {
        robot.keyPress(KeyEvent.VK_CONTROL);
        key(code);
        robot.keyRelease(KeyEvent.VK_CONTROL);
        idle();
    }

    /** Types letters, digits, points and spaces. */
    public void type(String text) {
        for (char c : text.toCharArray()) {
            boolean upper = Character.isUpperCase(c);
            if (upper) {
                robot.keyPress(KeyEvent.VK_SHIFT);
            }
            key(KeyEvent.getExtendedKeyCodeForChar(
                    String.valueOf(c).toLowerCase(Locale.ROOT).charAt(0)));
            if (upper) {
                robot.keyRelease(KeyEvent.VK_SHIFT);
            }
        }
    }

    /** Puts the cursor into the field and types. */
    public void fill(String field, String text) {
        click(field);
        type(text);
        RadioBench.await(
                field + " says " + text,
                () -> onEdt(() -> named(field).get(0) instanceof JTextComponent t
                        && t.getText().equals(text)));
    }

    /** What stands in the text whose name begins so. */
    public static String text(String begin) {
        return onEdt(() -> named(begin).stream()
                .filter(c -> c instanceof JTextComponent)
                .map(c -> ((JTextComponent) c).getText())
                .findFirst()
                .orElse(""));
    }

    /** Whether the cursor stands in a text. */
    public static boolean typing() {
        return onEdt(
                () -> KeyboardFocusManager.getCurrentKeyboardFocusManager().getFocusOwner() instanceof JTextComponent);
    }

    /** What a screen reader says of the rows of the list whose name begins so. */
    public static List<String> rows(String begin) {
        return onEdt(() -> named(begin).stream()
                .filter(c -> c instanceof JList<?>)
                .flatMap(c -> rows((JList<?>) c).stream())
                .toList());
    }

    private static <T> List<String> rows(JList<T> list) {
        List<String> rows = new ArrayList<>();
        for (int i = 0; i < list.getModel().getSize(); i++) {
            T row = list.getModel().getElementAt(i);
            rows.add(name(list.getCellRenderer().getListCellRendererComponent(list, row, i, false, false)));
        }
        return rows;
    }

    /** What is on the screen. */
    public void picture(File file, int width, int height) throws IOException {
        robot.mouseMove(width - 2, height - 2);
        idle();
        BufferedImage image = robot.createScreenCapture(new Rectangle(0, 0, width, height));
        ImageIO.write(image, "png", file);
    }

    /** Closes every window as its owner would. */
    public static void closeAll() {
        EventQueue.invokeLater(() -> {
            for (Window window : Window.getWindows()) {
                window.dispatchEvent(new WindowEvent(window, WindowEvent.WINDOW_CLOSING));
            }
        });
    }
}
