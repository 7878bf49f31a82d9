package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.GraphicsEnvironment;
import java.awt.KeyboardFocusManager;
import java.awt.Rectangle;
import java.awt.event.KeyEvent;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import javax.swing.JComponent;
import javax.swing.LayoutFocusTraversalPolicy;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import settlemark.job.Progress;
import settlemark.link.RadioBench;

/** Whatever can have the focus shows that it has it, in the faces of a job and before it, light and dark. */
@Tag("display")
@Timeout(180)
class FocusRingTest {
    /** So much longer than wide is the ring of the smallest thing. */
    private static final int LEAST_PIXELS = 90;

    /** What Tab stops at. */
    private static final class Order extends LayoutFocusTraversalPolicy {
        boolean takes(Component part) {
            return accept(part);
        }
    }

    private static final Order ORDER = new Order();

    @BeforeEach
    void needsADisplay() {
        Assumptions.assumeFalse(GraphicsEnvironment.isHeadless(), "no display");
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void theFocusIsSeenOnEverythingOfAJob(boolean dark) {
        Set<String> kinds = new TreeSet<>();
        for (Showroom room : List.of(
                new Showroom().at("left-high", Progress.ARMED, 150),
                new Showroom().at("close", Progress.OPEN, 100).closingZeroRead(),
                new Showroom().at("record", Progress.OPEN, 60))) {
            Desktop desktop = Desktop.open(
                    new FakeDesk(room.snapshot()),
                    Optional.of(new FakeHands()),
                    Optional.empty(),
                    new FakeHost(),
                    new DesktopOptions(dark, Optional.empty(), 1280, 720));
            try {
                kinds.addAll(rings((JComponent) desktop.frame().getContentPane()));
            } finally {
                WindowHands.onEdt(() -> {
                    desktop.close();
                    return 0;
                });
            }
        }
        assertThat(kinds).contains("ActButton", "TickButton", "JTextField");
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void theFocusIsSeenOnEverythingBeforeAJob(boolean dark) throws Exception {
        DesktopStart start = DesktopStart.show(new DesktopOptions(dark, Optional.empty(), 1280, 720), "Settlemark");
        try {
            start.choose(new FakeStart());
            WindowHands hands = new WindowHands();
            hands.awaitSeen("1, Try the demo rig");
            Set<String> kinds = new TreeSet<>(rings(pane()));
            hands.key(KeyEvent.VK_2);
            hands.awaitSeen("Place and job");
            kinds.addAll(rings(pane()));
            assertThat(kinds).contains("ActButton", "JTextField", "Begin");
        } finally {
            start.close();
        }
    }

    private static JComponent pane() {
        return WindowHands.onEdt(() -> {
            for (java.awt.Window window : java.awt.Window.getWindows()) {
                if (window instanceof javax.swing.JFrame frame && frame.isShowing()) {
                    return (JComponent) frame.getContentPane();
                }
            }
            throw new AssertionError("no window");
        });
    }

    /** Gives the focus to one thing after the other; returns their kinds. */
    private static Set<String> rings(JComponent pane) {
        Set<String> kinds = new TreeSet<>();
        List<JComponent> parts = WindowHands.onEdt(() -> {
            List<JComponent> all = new ArrayList<>();
            for (Component part : Painting.visible(pane)) {
                if (part != pane && part instanceof JComponent && ORDER.takes(part)) {
                    all.add((JComponent) part);
                }
            }
            return all;
        });
        for (JComponent part : parts) {
            BufferedImage without = painted(pane, part, pane);
            BufferedImage with = painted(pane, part, part);
            assertThat(changed(without, with))
                    .as(part.getClass().getSimpleName() + " "
                            + part.getAccessibleContext().getAccessibleName())
                    .isGreaterThan(LEAST_PIXELS);
            kinds.add(part.getClass().getSimpleName());
        }
        return kinds;
    }

    /** The part as it is painted while the owner has the focus, which a face may give to another thing at any time. */
    private static BufferedImage painted(JComponent pane, JComponent part, JComponent owner) {
        BufferedImage[] image = new BufferedImage[1];
        RadioBench.await(
                "the focus",
                () -> WindowHands.onEdt(() -> {
                    if (KeyboardFocusManager.getCurrentKeyboardFocusManager().getPermanentFocusOwner() != owner) {
                        owner.requestFocus();
                        return false;
                    }
                    BufferedImage all = Painting.paint(pane);
                    Rectangle place = SwingUtilities.convertRectangle(part.getParent(), part.getBounds(), pane)
                            .intersection(new Rectangle(0, 0, all.getWidth(), all.getHeight()));
                    image[0] = all.getSubimage(place.x, place.y, place.width, place.height);
                    return true;
                }));
        return image[0];
    }

    private static int changed(BufferedImage a, BufferedImage b) {
        int count = 0;
        for (int y = 0; y < a.getHeight(); y++) {
            for (int x = 0; x < a.getWidth(); x++) {
                count += a.getRGB(x, y) != b.getRGB(x, y) ? 1 : 0;
            }
        }
        return count;
    }
}
