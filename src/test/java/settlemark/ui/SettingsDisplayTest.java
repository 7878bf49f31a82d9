package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.EventQueue;
import java.awt.GraphicsEnvironment;
import java.awt.KeyboardFocusManager;
import java.awt.event.KeyEvent;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import settlemark.job.Act;
import settlemark.job.Progress;
import settlemark.link.RadioBench;
import settlemark.settle.SettleAdjustment;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleKind;

/** What counts as settled, changed in the course of a job, in the real window. */
@Tag("display")
final class SettingsDisplayTest {
    private static final String MOVES = "Gas pressure, may still move, inH\u2082O";

    private final FakeDesk desk =
            new FakeDesk(new Showroom().at("found-low", Progress.OPEN, 20).snapshot());

    @BeforeEach
    void needsADisplay() {
        Assumptions.assumeFalse(GraphicsEnvironment.isHeadless(), "no display");
    }

    @AfterEach
    void close() {
        WindowHands.closeAll();
    }

    private WindowHands open() throws Exception {
        Desktop desktop = Desktop.open(
                desk,
                Optional.of(new FakeHands()),
                Optional.empty(),
                new FakeHost(),
                new DesktopOptions(false, Optional.empty(), 1280, 800));
        EventQueue.invokeAndWait(desktop::tick);
        WindowHands hands = new WindowHands();
        hands.awaitSeen("strip of the job");
        hands.key(KeyEvent.VK_C);
        hands.awaitSeen(MOVES);
        awaitFocus(MOVES);
        return hands;
    }

    /** By what a screen reader calls what has the focus. */
    private static void awaitFocus(String begin) {
        RadioBench.await(
                "focus on " + begin,
                () -> WindowHands.onEdt(() -> {
                    Component owner = KeyboardFocusManager.getCurrentKeyboardFocusManager()
                            .getFocusOwner();
                    return owner != null
                            && owner.getAccessibleContext().getAccessibleName() != null
                            && owner.getAccessibleContext().getAccessibleName().startsWith(begin);
                }));
    }

    private static void type(WindowHands hands, String field, String text) {
        hands.click(field);
        awaitFocus(field);
        hands.control(KeyEvent.VK_A);
        hands.type(text);
        RadioBench.await(field + " says " + text, () -> WindowHands.text(field).equals(text));
    }

    @Test
    void anotherLimitIsUsedFromNowOnAndKeptAsAnAct() throws Exception {
        WindowHands hands = open();
        hands.awaitSeen("the job began with 0.02 inH\u2082O");
        type(hands, MOVES, "0.015");
        hands.key(KeyEvent.VK_ENTER);
        RadioBench.await("the act", () -> desk.acts().size() == 1);
        Act.Settings act = (Act.Settings) desk.acts().get(0);
        assertThat(act.from()).isEqualTo(SettleChoices.NONE);
        assertThat(act.to().of(SettleKind.GAS))
                .isEqualTo(new SettleAdjustment(0.015, Double.NaN, Double.NaN, List.of(), Double.NaN, Double.NaN));
        assertThat(act.to().adjustments()).hasSize(1);
        hands.awaitSeen("strip of the job");
        assertThat(hands.seen()).noneMatch(n -> n.startsWith(MOVES));
    }

    @Test
    void whatCannotWorkIsSaidAtItsFieldWhileItIsTypedAndNotUsed() throws Exception {
        WindowHands hands = open();
        type(hands, MOVES, "0.0001");
        hands.awaitWords("expected at least 0.01: take a larger limit, or a gauge that shows finer steps");
        hands.awaitSeen("Gas pressure, slowest hunting, s");
        type(hands, "Gas pressure, slowest hunting, s", "90");
        hands.awaitWords("add a longer window, or the swings are taken for drift");
        hands.key(KeyEvent.VK_ENTER);
        awaitFocus(MOVES);
        assertThat(desk.acts()).isEmpty();
        type(hands, MOVES, "much");
        hands.awaitWords("type a number with a point, such as 0.01; got \"much\"");
        hands.key(KeyEvent.VK_ESCAPE);
        hands.awaitSeen("strip of the job");
        assertThat(desk.acts()).isEmpty();
    }

    @Test
    void asTheJobBeganPutsEverythingBack() throws Exception {
        WindowHands hands = open();
        type(hands, MOVES, "0.03");
        hands.click("Air temperature");
        hands.awaitSeen("Air temperature, look ahead, s");
        type(hands, "Air temperature, look ahead, s", "240");
        hands.click("As the job began");
        awaitFocus("Air temperature, may still move");
        hands.key(KeyEvent.VK_ENTER);
        hands.awaitSeen("strip of the job");
        hands.awaitWords("Nothing is changed");
        assertThat(desk.acts()).isEmpty();
    }
}
