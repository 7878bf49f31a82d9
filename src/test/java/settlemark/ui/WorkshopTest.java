package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.GraphicsEnvironment;
import java.awt.event.KeyEvent;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import settlemark.link.RadioBench;
import settlemark.measure.Chunk;
import settlemark.profile.Profile;
import settlemark.profile.ProfileDraft;

@Timeout(120)
class WorkshopTest {
    private static final byte[] START = {(byte) 0xA5, 0x0E};
    private static final List<byte[]> FRAMES = WorkshopDraft.frames(FakeWorkshop.made(), new byte[0], 0);

    @Test
    void changingBytesAreFoundAndStillOnesAreNot() {
        boolean[] changing = WorkshopDraft.changing(FRAMES);
        assertThat(changing).hasSize(14);
        assertThat(changing[0]).isFalse();
        assertThat(changing[2]).as("the counter").isTrue();
        assertThat(changing[3]).isFalse();
        assertThat(changing[7]).as("the low byte of the first number").isTrue();
        assertThat(WorkshopDraft.usualLength(FRAMES)).isEqualTo(14);
    }

    @Test
    void framesAreCutFromAStreamByTheirStart() {
        byte[] stream = new byte[3 + 14 * 2];
        System.arraycopy(FRAMES.get(0), 0, stream, 3, 14);
        System.arraycopy(FRAMES.get(1), 0, stream, 17, 14);
        byte[] first = Arrays.copyOf(stream, 9);
        byte[] second = Arrays.copyOfRange(stream, 9, stream.length);
        List<byte[]> cut = WorkshopDraft.frames(List.of(new Chunk(0, 0, first), new Chunk(1, 0, second)), START, 14);
        assertThat(cut).hasSize(2);
        assertThat(cut.get(1)).isEqualTo(FRAMES.get(1));
    }

    @Test
    void theCheckAtTheEndIsRecognised() {
        assertThat(WorkshopDraft.check(FRAMES, 2, 14)).isEqualTo(ProfileDraft.Check.CRC_16_MODBUS);
        List<byte[]> spoiled = FRAMES.stream().map(byte[]::clone).toList();
        spoiled.forEach(f -> f[12] ^= 0x55);
        assertThat(WorkshopDraft.check(spoiled, 2, 14)).isEqualTo(ProfileDraft.Check.NONE);
    }

    private static WorkshopDraft draft() {
        return new WorkshopDraft("two-port", "Two port", 2, 14, ProfileDraft.Check.CRC_16_MODBUS, List.of())
                .with(new WorkshopDraft.Picked("inlet", 4, 4, "int", true, 0.1, "Pa"))
                .with(new WorkshopDraft.Picked("manifold", 8, 4, "int", true, 0.1, "Pa"));
    }

    @Test
    void thePickedFieldsAreAProfileWhoseExampleIsACapturedFrame() {
        String text = draft().text(FRAMES);
        assertThat(WorkshopDraft.problems(text)).isEmpty();
        assertThat(text).contains("examples:").containsIgnoringCase("a5 0e 60");
        Profile profile = WorkshopDraft.read(text).orThrow();
        // 16900 and 8690 steps of a tenth of a pascal.
        assertThat(WorkshopDraft.values(profile, FRAMES.get(0))).isEqualTo(Map.of("inlet", 1690.0, "manifold", 869.0));
    }

    @Test
    void aFieldTakesThePlaceOfTheOneThatItOverlaps() {
        WorkshopDraft other = draft().with(new WorkshopDraft.Picked("low", 6, 2, "uint", true, 1, "Pa"));
        assertThat(other.fields()).extracting(WorkshopDraft.Picked::name).containsExactly("low", "manifold");
        assertThat(other.without(6).fields()).hasSize(1);
    }

    private static void openFrames(WindowHands hands) throws Exception {
        hands.click("Workshop");
        hands.awaitSeen("0 frames");
        hands.key(KeyEvent.VK_O);
        hands.awaitSeen("Capture, or file");
        hands.type("frames.hex");
        hands.key(KeyEvent.VK_ENTER);
        hands.awaitSeen("12 frames");
    }

    private static void makeField(WindowHands hands) throws Exception {
        hands.dragAcross("12 frames", 20 + 46 * 4.5, 20 + 46 * 7.5);
        hands.awaitWords("picked: bytes 4 to 7");
        hands.fill("Name of the field", "inlet");
        hands.click("Make field");
        hands.awaitWords("inlet 16911 Pa");
    }

    @Test
    @Tag("display")
    void bytesArePickedByThePointerNamedCheckedAndSaved() throws Exception {
        Assumptions.assumeFalse(GraphicsEnvironment.isHeadless(), "no display");
        FakeStart host = new FakeStart();
        DesktopStart start = DesktopStart.show(new DesktopOptions(false, Optional.empty(), 1280, 720), "Settlemark");
        try {
            start.choose(host);
            WindowHands hands = new WindowHands();
            openFrames(hands);
            hands.dragAcross("12 frames", 20 + 46 * 0.5, 20 + 46 * 1.5);
            hands.awaitWords("picked: bytes 0 to 1");
            hands.click("Start");
            makeField(hands);
            hands.key(KeyEvent.VK_ESCAPE);
            hands.click("Save profile");
            hands.awaitWords("saved: my-gauge.yaml");
            assertThat(host.workshop.saved).hasSize(1);
            assertThat(WorkshopDraft.problems(host.workshop.saved.get(0))).isEmpty();
            hands.click("Undo");
            RadioBench.await("no field", () -> hands.seen().stream().noneMatch(n -> n.contains("inlet 16911")));
            hands.key(KeyEvent.VK_ESCAPE);
            hands.awaitSeen("1, Try the demo rig");
        } finally {
            start.close();
        }
    }

    @Test
    @Tag("display")
    void whatWasBegunIsThereAgainInTheSameWindowAndInTheNext() throws Exception {
        Assumptions.assumeFalse(GraphicsEnvironment.isHeadless(), "no display");
        DesktopOptions options = new DesktopOptions(false, Optional.empty(), 1280, 720);
        ScreenState left;
        DesktopStart start = DesktopStart.show(options, "Settlemark");
        try {
            start.choose(new FakeStart());
            WindowHands hands = new WindowHands();
            openFrames(hands);
            makeField(hands);
            hands.click("Scale");
            hands.key(KeyEvent.VK_END);
            hands.type("0.");
            RadioBench.await("half a scale", () -> WindowHands.text("Scale").equals("10."));
            hands.key(KeyEvent.VK_ESCAPE);
            hands.click("Back");
            hands.awaitSeen("1, Try the demo rig");
            hands.click("Workshop");
            hands.awaitWords("inlet 16911 Pa");
            left = start.state();
        } finally {
            start.close();
        }
        DesktopStart next = DesktopStart.show(options, "Settlemark");
        try {
            next.restore(left);
            next.choose(new FakeStart());
            WindowHands hands = new WindowHands();
            hands.awaitWords("inlet 16911 Pa");
            assertThat(WindowHands.text("Scale")).isEqualTo("10.");
        } finally {
            next.close();
        }
    }
}
