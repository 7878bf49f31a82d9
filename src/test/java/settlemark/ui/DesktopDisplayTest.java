package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.AWTEvent;
import java.awt.EventQueue;
import java.awt.GraphicsEnvironment;
import java.awt.Toolkit;
import java.awt.Window;
import java.awt.event.KeyEvent;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import javax.swing.JDialog;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import settlemark.job.Act;
import settlemark.job.Progress;
import settlemark.link.RadioBench;

/** The real window, where there is a display. */
@Tag("display")
class DesktopDisplayTest {
    private final FakeHost host = new FakeHost();

    @BeforeEach
    void needsADisplay() {
        Assumptions.assumeFalse(GraphicsEnvironment.isHeadless(), "no display");
    }

    private Desktop open(FakeDesk desk) {
        return Desktop.open(
                desk,
                Optional.of(new FakeHands()),
                Optional.empty(),
                host,
                new DesktopOptions(false, Optional.empty(), 1280, 720));
    }

    @Test
    void theWindowPaintsAndKeysReachTheJobWithoutAnyDialog() throws Exception {
        CountDownLatch painted = new CountDownLatch(1);
        Toolkit.getDefaultToolkit().addAWTEventListener(e -> painted.countDown(), AWTEvent.PAINT_EVENT_MASK);
        FakeDesk desk =
                new FakeDesk(new Showroom().at("zero", Progress.OPEN, 20).snapshot());
        Desktop desktop = open(desk);
        assertThat(painted.await(20, TimeUnit.SECONDS)).isTrue();
        assertThat(desktop.frame().getTitle()).isEqualTo("Settlemark: Ash Lane 12, two-stage furnace, natural gas");
        assertThat(desktop.frame().getContentPane().getSize()).hasToString("java.awt.Dimension[width=1280,height=720]");
        press(desktop, KeyEvent.VK_SPACE, ' ');
        assertThat(desk.acts()).containsExactly(new Act.Confirm("zero"));
        press(desktop, KeyEvent.VK_S, 's');
        for (Window window : Window.getWindows()) {
            assertThat(window).isNotInstanceOf(JDialog.class);
        }
        EventQueue.invokeAndWait(desktop::close);
        assertThat(desktop.frame().isDisplayable()).isFalse();
    }

    @Test
    void theLetterThatOpensTheLineIsNotTypedIntoIt() throws Exception {
        FakeDesk desk =
                new FakeDesk(new Showroom().at("zero", Progress.OPEN, 20).snapshot());
        Desktop desktop = open(desk);
        WindowHands hands = new WindowHands();
        hands.awaitSeen("strip of the job");
        hands.key(KeyEvent.VK_N);
        hands.awaitSeen("Note on");
        hands.type("hose was loose");
        hands.key(KeyEvent.VK_ENTER);
        RadioBench.await("the note", () -> !desk.acts().isEmpty());
        assertThat(desk.acts()).containsExactly(new Act.Note("zero", "hose was loose"));
        EventQueue.invokeAndWait(desktop::close);
    }

    private static void press(Desktop desktop, int code, char character) throws Exception {
        EventQueue.invokeAndWait(() -> {
            var pane = desktop.frame().getContentPane();
            KeyEvent event = new KeyEvent(pane, KeyEvent.KEY_PRESSED, System.currentTimeMillis(), 0, code, character);
            pane.dispatchEvent(event);
        });
    }

    @Test
    void closingTheWindowTellsTheProgram() throws Exception {
        Desktop desktop =
                open(new FakeDesk(new Showroom().at("plate", Progress.OPEN, 5).snapshot()));
        EventQueue.invokeAndWait(() -> desktop.frame()
                .dispatchEvent(
                        new java.awt.event.WindowEvent(desktop.frame(), java.awt.event.WindowEvent.WINDOW_CLOSING)));
        assertThat(host.closed).isEqualTo(1);
    }

    @Test
    void aThemeIsChangedInTheRunningWindow() throws Exception {
        Desktop desktop = open(new FakeDesk(Shots.room("08-left-high-armed").snapshot()));
        EventQueue.invokeAndWait(() -> {
            desktop.tick();
            desktop.controller().perform(Deed.THEME);
            desktop.tick();
        });
        var image = Painting.paint(desktop.frame().getContentPane());
        assertThat(Painting.grey(image, 640, 20)).isLessThan(60);
        EventQueue.invokeAndWait(desktop::close);
    }
}
