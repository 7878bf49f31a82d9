package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.EventQueue;
import java.awt.GraphicsEnvironment;
import java.awt.KeyboardFocusManager;
import java.awt.event.KeyEvent;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.swing.text.JTextComponent;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import settlemark.job.Act;
import settlemark.job.Progress;
import settlemark.link.RadioBench;
import settlemark.session.DeviceList;

/** Ctrl L changes the language in place, on every face: what was typed, found and open stays. */
@Tag("display")
@Timeout(120)
class LanguageWindowTest {
    private final FakeStart host = new FakeStart();
    private @Nullable DesktopStart start;
    private @Nullable Desktop desktop;
    private WindowHands hands;

    @BeforeEach
    void needsADisplay() throws Exception {
        Assumptions.assumeFalse(GraphicsEnvironment.isHeadless(), "no display");
        hands = new WindowHands();
    }

    @AfterEach
    void close() throws Exception {
        if (start != null) {
            start.close();
        }
        if (desktop != null) {
            EventQueue.invokeAndWait(desktop::close);
        }
        Words.speak(Language.ENGLISH);
    }

    private void open() {
        start = DesktopStart.show(new DesktopOptions(false, Optional.empty(), 1280, 720), "Settlemark");
        start.choose(host);
        hands.awaitSeen("1, Try the demo rig");
    }

    /** Waits until the cursor stands in a text whose name begins so, and returns what it holds. */
    private static String awaitTypingIn(String begin) {
        String[] text = new String[1];
        RadioBench.await("cursor in " + begin, () -> {
            text[0] = WindowHands.onEdt(() -> KeyboardFocusManager.getCurrentKeyboardFocusManager()
                                            .getFocusOwner()
                                    instanceof JTextComponent field
                            && field.getAccessibleContext().getAccessibleName().startsWith(begin)
                    ? field.getText()
                    : "\u0000");
            return !text[0].equals("\u0000");
        });
        return text[0];
    }

    private static boolean cursorAtTheEnd() {
        return WindowHands.onEdt(() ->
                KeyboardFocusManager.getCurrentKeyboardFocusManager().getFocusOwner() instanceof JTextComponent field
                        && field.getSelectedText() == null
                        && field.getCaretPosition() == field.getDocument().getLength());
    }

    @Test
    void aPlateThatIsTypedGoesOnInTheOtherLanguageWhereTheCursorWas() {
        open();
        hands.click("2, Connect probes");
        hands.fill("Place and job", "quarry");
        hands.fill("Inlet, least", "4.5");
        hands.control(KeyEvent.VK_L);
        hands.awaitSeen("Ort und Auftrag");
        assertThat(awaitTypingIn("Eingang, mindestens")).isEqualTo("4.5");
        assertThat(WindowHands.text("Ort und Auftrag")).isEqualTo("quarry");
        hands.control(KeyEvent.VK_L);
        hands.awaitSeen("Place and job");
        assertThat(awaitTypingIn("Inlet, least")).isEqualTo("4.5");
        RadioBench.await("nothing is selected", LanguageWindowTest::cursorAtTheEnd);
        hands.type("0");
        RadioBench.await("typed on", () -> WindowHands.text("Inlet, least").equals("4.50"));
        assertThat(Objects.requireNonNull(start).state().plate())
                .containsEntry("inlet.least", "4.50")
                .containsEntry("place", "quarry");
        hands.undo();
        RadioBench.await("taken back", () -> WindowHands.text("Inlet, least").equals("4.5"));
        hands.undo();
        RadioBench.await(
                "also what was typed in the other language",
                () -> WindowHands.text("Inlet, least").equals("4."));
    }

    @Test
    void probesThatWereFoundAndChosenStayAndAnOpenListIsLeft() {
        open();
        hands.click("2, Connect probes");
        hands.click("Plan: ");
        hands.choose("gas supply with all");
        hands.fill("Place and job", "quarry rise 3");
        hands.fill("Appliance", "furnace");
        hands.fill("Inlet, least", "4.5");
        hands.fill("Inlet, most", "10.5");
        hands.key(KeyEvent.VK_ENTER);
        hands.awaitSeen("Look again");
        host.finds(new DeviceList(List.of(FoundDevices.radio(1)), List.of()));
        hands.awaitSeen("Probe 1: ");
        hands.click("probe of the Inlet");
        hands.choose("Probe 1, ");
        hands.awaitWords("Inlet: Probe 1, ");
        hands.key(KeyEvent.VK_1);
        hands.awaitSeen("Which probe is the inlet?");
        hands.control(KeyEvent.VK_L);
        hands.awaitWords("Eingang: Probe 1, ");
        assertThat(hands.seen()).noneMatch(n -> n.contains("Which probe"));
        assertThat(host.begun).isEmpty();
        hands.click("Verbinden und beginnen");
        RadioBench.await("begun", () -> host.begun.size() == 1);
        assertThat(host.begun.get(0).title()).isEqualTo("quarry rise 3");
        host.failsWith("Probe 1 is not heard: press its button");
    }

    @Test
    void framesFieldsAndTextOfTheWorkshopStay() {
        open();
        hands.click("Workshop");
        hands.awaitSeen("0 frames");
        hands.key(KeyEvent.VK_O);
        hands.awaitSeen("Capture, or file");
        hands.type("frames.hex");
        hands.control(KeyEvent.VK_L);
        // The question itself goes on in the other language.
        assertThat(awaitTypingIn("Mitschnitt")).isEqualTo("frames.hex");
        hands.key(KeyEvent.VK_ENTER);
        hands.awaitSeen("12 Rahmen");
        hands.dragAcross("12 Rahmen", 20 + 46 * 4.5, 20 + 46 * 7.5);
        hands.fill("Name des Felds", "inlet");
        hands.key(KeyEvent.VK_ENTER);
        RadioBench.await("the text", () -> WindowHands.text("Text des Profils").contains("inlet"));
        String text = WindowHands.text("Text des Profils");
        hands.control(KeyEvent.VK_L);
        hands.awaitSeen("12 frames");
        assertThat(WindowHands.text("text of the profile")).isEqualTo(text);
        assertThat(WindowHands.text("Name of the field")).isEqualTo("inlet");
    }

    @Test
    void aRunningJobSpeaksTheOtherLanguageAndTheNoteThatIsTypedStays() throws Exception {
        FakeDesk desk =
                new FakeDesk(new Showroom().at("zero", Progress.OPEN, 20).snapshot());
        desktop = Desktop.open(
                desk,
                Optional.of(new FakeHands()),
                Optional.empty(),
                new FakeHost(),
                new DesktopOptions(false, Optional.empty(), 1280, 720));
        hands.awaitSeen("strip of the job");
        hands.key(KeyEvent.VK_N);
        hands.awaitSeen("Note on");
        hands.type("hose");
        hands.control(KeyEvent.VK_L);
        assertThat(awaitTypingIn("Notiz zu")).isEqualTo("hose");
        RadioBench.await("nothing is selected", LanguageWindowTest::cursorAtTheEnd);
        hands.type(" loose");
        hands.key(KeyEvent.VK_ENTER);
        RadioBench.await("the note", () -> !desk.acts().isEmpty());
        assertThat(desk.acts()).containsExactly(new Act.Note("zero", "hose loose"));
        hands.key(KeyEvent.VK_SPACE);
        RadioBench.await("the press", () -> desk.acts().size() == 2);
        assertThat(desk.acts()).endsWith(new Act.Confirm("zero"));
        hands.control(KeyEvent.VK_L);
        hands.awaitSeen("strip of the job");
    }
}
