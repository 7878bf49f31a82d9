package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.GraphicsEnvironment;
import java.awt.event.KeyEvent;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import settlemark.link.RadioBench;

/** The menu of everything, the ruler, taking edits back, and what a restart puts back, by real keys. */
@Tag("display")
@Timeout(120)
class MenuAndSizeTest {
    private final FakeStart host = new FakeStart();
    private DesktopStart start;
    private WindowHands hands;

    @BeforeEach
    void open() throws Exception {
        Assumptions.assumeFalse(GraphicsEnvironment.isHeadless(), "no display");
        start = DesktopStart.show(new DesktopOptions(false, Optional.empty(), 1280, 720), "Settlemark");
        start.choose(host);
        hands = new WindowHands();
        hands.awaitSeen("1, Try the demo rig");
    }

    @AfterEach
    void close() {
        if (start != null) {
            start.close();
        }
    }

    @Test
    void theMenuComesWithItsKeyDoesAnActAndGoes() {
        hands.key(KeyEvent.VK_F10);
        RadioBench.await("the menu", () -> WindowHands.menuShown());
        hands.key(KeyEvent.VK_ESCAPE);
        hands.key(KeyEvent.VK_ESCAPE);
        RadioBench.await("the menu has gone", () -> !WindowHands.menuShown());
        assertThat(host.closed).isZero();
    }

    @Test
    void aRulerMakesMillimetresTrueAndTheStateRemembersThem() {
        hands.click("Size");
        hands.awaitSeen("How many millimetres long");
        // The line is 400 pixels long at 100 %: at 80 mm a millimetre has 5 of them.
        hands.type("80");
        hands.key(KeyEvent.VK_ENTER);
        hands.awaitWords("Digits are 20 mm high");
        assertThat(start.state().pixelsPerMm()).isCloseTo(5, within(1e-9));
        hands.click("Size");
        hands.awaitSeen("How many millimetres long");
        hands.type("0");
        hands.key(KeyEvent.VK_ENTER);
        hands.awaitWords("The line is 5 to 500 mm long");
        assertThat(start.state().pixelsPerMm()).isCloseTo(5, within(1e-9));
    }

    @Test
    void editsOfThePlateAreTakenBackAndAnUnfinishedPlateComesBack() {
        hands.click("2, Connect probes");
        hands.fill("Place and job", "quarry");
        hands.fill("Inlet, least", "4.5");
        hands.undo();
        RadioBench.await(
                "the last digit is gone",
                () -> !WindowHands.text("Inlet, least").equals("4.5"));
        assertThat(start.state().plate()).containsEntry("place", "quarry");
        hands.key(KeyEvent.VK_ESCAPE);
        hands.key(KeyEvent.VK_T);
        RadioBench.await("dark", () -> start.state().dark());
        ScreenState kept = start.state();
        start.close();
        start = DesktopStart.show(new DesktopOptions(false, Optional.empty(), 1280, 720), "Settlemark");
        start.restore(kept);
        start.choose(host);
        RadioBench.await("the place", () -> WindowHands.text("Place and job").equals("quarry"));
        assertThat(start.state()).isEqualTo(kept);
    }

    @Test
    void theLanguageChangesAtOnceAndIsKept() {
        try {
            hands.click("Deutsch");
            hands.awaitSeen("1, Vorf\u00fchrung");
            assertThat(hands.seen()).noneMatch(n -> n.contains("demo rig"));
            assertThat(start.state().language()).isEqualTo(Language.GERMAN);
            hands.click("English");
            hands.awaitSeen("1, Try the demo rig");
            start.restore(new ScreenState(
                    false,
                    -1,
                    false,
                    0,
                    Optional.empty(),
                    Language.GERMAN,
                    Map.of(),
                    Map.of(),
                    "first",
                    Optional.empty()));
            start.choose(host);
            hands.awaitSeen("1, Vorf\u00fchrung");
        } finally {
            Words.speak(Language.ENGLISH);
        }
    }

    @Test
    void whatIsOutsideItsBoundsIsRefused() {
        org.assertj.core.api.Assertions.assertThatThrownBy(() -> new ScreenState(
                        false,
                        7,
                        false,
                        0,
                        Optional.empty(),
                        Language.ENGLISH,
                        Map.of(),
                        Map.of(),
                        "first",
                        Optional.empty()))
                .hasMessageContaining("units -1 to 2, got 7");
    }
}
