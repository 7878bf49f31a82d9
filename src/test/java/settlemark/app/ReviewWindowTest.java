package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.EventQueue;
import java.awt.GraphicsEnvironment;
import java.awt.event.KeyEvent;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;
import settlemark.cli.Commands;
import settlemark.link.RadioBench;
import settlemark.session.Note;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;
import settlemark.store.SqliteStore;
import settlemark.ui.DesktopOptions;
import settlemark.ui.DesktopStart;
import settlemark.ui.ReviewHost;
import settlemark.ui.SeenView;
import settlemark.ui.WindowHands;

/** Two stored jobs of the demo, looked through in the real window with pointer and keys. */
@Tag("display")
@Timeout(180)
class ReviewWindowTest {
    @TempDir(cleanup = CleanupMode.ALWAYS)
    private static Path folder = Path.of("");

    private static final StringWriter ERR = new StringWriter();
    private final CountDownLatch closed = new CountDownLatch(1);
    private final AtomicInteger readOnEventThread = new AtomicInteger();
    private DesktopStart window;
    private ReviewRun review;

    @BeforeAll
    static void twoJobs() {
        Assumptions.assumeFalse(GraphicsEnvironment.isHeadless(), "no display");
        for (int i = 0; i < 2; i++) {
            run(
                    "demo",
                    "--headless",
                    "--plan",
                    "supply-check",
                    "--workspace",
                    workspace().toString(),
                    "--out",
                    folder.resolve("records").toString());
        }
    }

    private static String run(String... line) {
        StringWriter out = new StringWriter();
        Commands.run(new Settlemark(), new PrintWriter(out, true), new PrintWriter(ERR, true), line);
        return out.toString();
    }

    private static Path workspace() {
        return folder.resolve("demo.settlemark");
    }

    @BeforeEach
    void open() {
        window = DesktopStart.show(new DesktopOptions(false, Optional.empty(), 1280, 720), "Settlemark");
        review = new ReviewRun(List.of(workspace()), Optional.of(folder.resolve("kept")), new PrintWriter(ERR, true));
        window.review(new Watched(review), workspace(), 2, 20, closed::countDown);
    }

    @AfterEach
    void close() {
        window.close();
        review.close();
        assertThat(readOnEventThread).hasValue(0);
    }

    @AfterAll
    static void nothingWentWrong() {
        assertThat(ERR.toString()).doesNotContain("a fault of the program");
    }

    @Test
    void aSessionOpensFoldedPlaysStopsAndIsScrubbedByKeysAndPointer() throws Exception {
        WindowHands hands = new WindowHands();
        hands.awaitSeen("Stop");
        hands.awaitSeen("strip of the session");
        hands.awaitSeen("Record, done");
        hands.awaitSeen("open column: Whole session");
        hands.key(KeyEvent.VK_SPACE);
        hands.awaitSeen("Play");
        hands.key(KeyEvent.VK_HOME);
        String start = line(hands);
        hands.key(KeyEvent.VK_PERIOD);
        RadioBench.await("the line moves", () -> !line(hands).equals(start));
        hands.click("whole session");
        RadioBench.await("the line is in the middle", () -> !line(hands).equals(start));
        hands.key(KeyEvent.VK_K);
        hands.awaitWords("read ");
    }

    private static String line(WindowHands hands) {
        return hands.seen().stream()
                .filter(n -> n.startsWith("whole session"))
                .findFirst()
                .orElse("");
    }

    @Test
    void aSecondPersonReturnsASealedRecordWithTheReasonThenAcceptsIt() throws Exception {
        WindowHands hands = new WindowHands();
        hands.awaitSeen("Record, done");
        hands.key(KeyEvent.VK_V);
        hands.choose("Return it");
        hands.awaitSeen("Your name");
        hands.type("A. Second");
        hands.key(KeyEvent.VK_ENTER);
        hands.awaitSeen("Why does it go back?");
        hands.type("rise read too early");
        hands.key(KeyEvent.VK_ENTER);
        hands.awaitWords("Returned by A. Second, signed");
        hands.key(KeyEvent.VK_SLASH);
        hands.awaitSeen("Search");
        RadioBench.await(
                "the list says so",
                () -> WindowHands.rows("sessions").stream()
                        .anyMatch(r -> r.contains("returned by A. Second: rise read too early")));
        hands.key(KeyEvent.VK_ESCAPE);
        RadioBench.await("the cursor has left the search", () -> !WindowHands.typing());
        hands.key(KeyEvent.VK_V);
        hands.choose("Accept it");
        hands.awaitSeen("Your name");
        hands.type("B. Third");
        hands.key(KeyEvent.VK_ENTER);
        hands.awaitWords("Accepted by B. Third, signed");
        try (SqliteStore store = Workspaces.reading(Optional.of(workspace()))) {
            assertThat(KeptSeals.of(store, 2).reviews())
                    .extracting(r -> r.person() + " " + r.accepted() + " " + r.comment())
                    .containsExactly("A. Second false rise read too early", "B. Third true ");
        }
        window.review(new Watched(review), workspace(), 2, 20, closed::countDown);
        hands.awaitSeen("Record, done");
        hands.key(KeyEvent.VK_SLASH);
        hands.awaitSeen("Search");
        RadioBench.await(
                "the newest word is read with the list",
                () -> WindowHands.rows("sessions").stream().anyMatch(r -> r.contains("accepted by B. Third")));
    }

    /** The rig's lock-up is 7.8 inH2O. */
    @Test
    void otherLimitsAreTypedSaidSignedListedAndHeldByVerify() throws Exception {
        WindowHands hands = new WindowHands();
        hands.awaitSeen("Record, done");
        hands.key(KeyEvent.VK_SPACE);
        hands.click("Accept");
        hands.choose("Hold it against other limits first");
        hands.awaitSeen("Other limits");
        String low = "Supply at lock-up, Inlet, at least";
        retype(hands, low, "eight");
        hands.awaitSeen("type a number with a point, such as 0.01; got \"eight\"");
        hands.click("Keep for your word");
        hands.awaitSeen("Other limits");
        retype(hands, low, "8");
        hands.awaitSeen("outside (was inside)");
        hands.click("Keep for your word");
        hands.awaitWords("1 verdict becomes another. V gives your word");
        hands.key(KeyEvent.VK_V);
        hands.awaitSeen("It is judged again under lock-up.inlet=8..");
        hands.choose("Accept it");
        hands.awaitSeen("Your name");
        hands.type("C. Fourth");
        hands.key(KeyEvent.VK_ENTER);
        hands.awaitWords("Accepted by C. Fourth, signed");
        hands.key(KeyEvent.VK_SLASH);
        hands.awaitSeen("Search");
        RadioBench.await(
                "the list says so",
                () -> WindowHands.rows("sessions").stream()
                        .anyMatch(r -> r.contains("accepted by C. Fourth, judged again: 1 verdict became another")));
        String verified = run(
                "verify",
                sealOfTheSecond().toString(),
                "--workspace",
                workspace().toString());
        assertThat(verified)
                .contains("review: accepted by C. Fourth")
                .contains("; judged again under lock-up.inlet=8..")
                .contains(" [in_i'H2O]: lock-up inlet: inside became outside");
    }

    private static Path sealOfTheSecond() throws IOException {
        try (Stream<Path> files = Files.list(folder.resolve("records"))) {
            return files.filter(f -> f.toString().endsWith("-seal.json"))
                    .max(Comparator.naturalOrder())
                    .orElseThrow();
        }
    }

    @Test
    void whatWasTriedCanBeLeftOut() throws Exception {
        WindowHands hands = new WindowHands();
        hands.awaitSeen("Record, done");
        hands.key(KeyEvent.VK_SPACE);
        hands.key(KeyEvent.VK_L);
        hands.awaitSeen("Other limits");
        RadioBench.await("the cursor is in a field", WindowHands::typing);
        retype(hands, "Supply at lock-up, Inlet, at least", "8");
        hands.key(KeyEvent.VK_ESCAPE);
        hands.key(KeyEvent.VK_L);
        hands.awaitSeen("Other limits");
        assertThat(WindowHands.text("Supply at lock-up, Inlet, at least"))
                .as("Esc kept nothing")
                .isNotEqualTo("8");
        retype(hands, "Supply at lock-up, Inlet, at least", "8");
        hands.key(KeyEvent.VK_ENTER);
        hands.awaitWords("1 verdict becomes another. V gives your word");
        hands.key(KeyEvent.VK_V);
        hands.awaitSeen("It is judged again under");
        hands.choose("Leave out what was tried");
        RadioBench.await("it is left out", () -> hands.seen().stream().noneMatch(n -> n.startsWith("It is judged")));
        hands.choose("Accept it");
        hands.awaitSeen("Your name");
        hands.key(KeyEvent.VK_ESCAPE);
    }

    /** Takes the place of what stands in a field. */
    private static void retype(WindowHands hands, String field, String text) {
        hands.click(field);
        hands.control(KeyEvent.VK_A);
        hands.type(text);
        RadioBench.await(field + " says " + text, () -> WindowHands.text(field).equals(text));
    }

    @Test
    void aFoldedColumnOpensByThePointerAndZoomGoesDownToSingleSamples() throws Exception {
        WindowHands hands = new WindowHands();
        hands.awaitSeen("Record, done");
        hands.key(KeyEvent.VK_SPACE);
        hands.click("Supply, this appliance");
        hands.awaitSeen("open column: ");
        hands.awaitWords("inlet");
        for (int i = 0; i < 12; i++) {
            hands.key(KeyEvent.VK_PLUS);
        }
        hands.awaitSeen("open column: ");
        hands.key(KeyEvent.VK_0);
        hands.awaitSeen("open column: Whole session");
    }

    @Test
    void theSessionIsShownInOtherUnitsAndStoredAsBefore() throws Exception {
        WindowHands hands = new WindowHands();
        hands.awaitSeen("Record, done");
        hands.key(KeyEvent.VK_SPACE);
        hands.awaitSeen("Play");
        hands.key(KeyEvent.VK_HOME);
        hands.awaitWords("inH\u2082O");
        hands.key(KeyEvent.VK_U);
        hands.awaitWords("Shown in mbar and \u00b0C; stored as before");
        hands.awaitWords("mbar");
        assertThat(hands.seen()).noneMatch(n -> n.startsWith("at ") && n.contains("inH\u2082O"));
        hands.key(KeyEvent.VK_U);
        hands.awaitWords("Shown in Pa and \u00b0C; stored as before");
        hands.click("Export");
        hands.choose("Table");
        hands.awaitWords("kept: ");
        RadioBench.await(
                "the file", () -> kept().stream().anyMatch(f -> f.toString().endsWith(".csv")));
        List<String> rows = Files.readAllLines(file(".csv"));
        assertThat(rows).anyMatch(r -> r.contains(",inlet,Pa,"));
        assertThat(rows).noneMatch(r -> r.contains("[in_i'H2O]"));
        try (Stream<Path> files = Files.list(folder.resolve("kept"))) {
            for (Path made : files.toList()) {
                Files.delete(made);
            }
        }
    }

    @Test
    void anotherLanguageKeepsTheSessionTheStretchAndWhatIsTyped() throws Exception {
        WindowHands hands = new WindowHands();
        hands.awaitSeen("Record, done");
        hands.key(KeyEvent.VK_SPACE);
        hands.awaitSeen("Play");
        hands.click("What if");
        hands.fill("Limit, gas", "0.001");
        hands.control(KeyEvent.VK_L);
        try {
            hands.awaitSeen("offene Spalte: Ganze Sitzung");
            hands.awaitSeen("Abspielen");
            RadioBench.await(
                    "what was typed", () -> WindowHands.text("Grenze, Gas").equals("0.001"));
            assertThat(hands.seen()).noneMatch(n -> n.contains("Whole session") || n.contains("What if"));
        } finally {
            hands.control(KeyEvent.VK_L);
            hands.awaitSeen("open column: Whole session");
        }
    }

    @Test
    void anotherSessionIsLaidUnderAndTakenOff() throws Exception {
        WindowHands hands = new WindowHands();
        hands.awaitSeen("Record, done");
        hands.click("Lay over");
        hands.choose("Ash Lane");
        hands.awaitWords("laid over Ash Lane");
        hands.click("Take off");
        hands.awaitSeen("open column: Whole session");
    }

    @Test
    void whatIsSeenIsKeptAsPictureDrawingAndTable() throws Exception {
        WindowHands hands = new WindowHands();
        hands.awaitSeen("Record, done");
        for (String form : List.of("Picture", "Drawing", "Table")) {
            hands.click("Export");
            hands.choose(form);
            hands.awaitWords("kept: ");
            hands.key(KeyEvent.VK_HOME);
        }
        RadioBench.await("three files", () -> kept().size() == 3);
        BufferedImage picture = ImageIO.read(file(".png").toFile());
        assertThat(picture.getWidth()).isEqualTo(2800);
        assertThat(Files.readString(file(".svg")))
                .contains("<svg")
                .contains("</svg")
                .contains("SIMULATED");
        List<String> rows = Files.readAllLines(file(".csv"));
        assertThat(rows.get(0)).startsWith("session,simulated,channel,unit,time_s");
        assertThat(rows).hasSizeGreaterThan(100);
        assertThat(rows.get(1)).contains("SIMULATED").contains("inlet");
    }

    private List<Path> kept() {
        try (Stream<Path> files = Files.list(folder.resolve("kept"))) {
            return files.filter(f -> !f.toString().endsWith(".part")).toList();
        } catch (IOException e) {
            return List.of();
        }
    }

    private Path file(String ending) {
        return kept().stream()
                .filter(f -> f.toString().endsWith(ending))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no " + ending + " among " + kept()));
    }

    @Test
    void anotherRuleSaysWhatItChangesAndANoteStandsAtItsTime() throws Exception {
        WindowHands hands = new WindowHands();
        hands.awaitSeen("Record, done");
        hands.key(KeyEvent.VK_SPACE);
        hands.click("What if");
        hands.fill("Limit, gas", "0.001");
        hands.key(KeyEvent.VK_ENTER);
        RadioBench.await(
                "an answer",
                () -> WindowHands.text("what the other rule changes").contains("What is stored is not changed"));
        hands.key(KeyEvent.VK_ESCAPE);
        hands.key(KeyEvent.VK_ESCAPE);
        hands.key(KeyEvent.VK_N);
        hands.awaitSeen("Note at ");
        hands.type("hose was loose");
        hands.key(KeyEvent.VK_ENTER);
        hands.key(KeyEvent.VK_HOME);
        RadioBench.await("the note is stored", () -> notes() == 1);
    }

    private int notes() {
        try (var store = Workspaces.reading(Optional.of(workspace()))) {
            List<Note> notes = store.papers().notes(2);
            return notes.size();
        } catch (Exception e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void theListIsSearchedByWordsAndEscapeLeadsOut() throws Exception {
        WindowHands hands = new WindowHands();
        hands.awaitSeen("Record, done");
        hands.key(KeyEvent.VK_SLASH);
        hands.awaitSeen("Search");
        hands.type("nowhere");
        hands.awaitWords("0 of 2 sessions");
        hands.key(KeyEvent.VK_ESCAPE);
        hands.key(KeyEvent.VK_ESCAPE);
        assertThat(closed.await(20, TimeUnit.SECONDS)).isTrue();
    }

    /** Passes everything on, and counts what would read on the event thread. */
    private final class Watched implements ReviewHost {
        private final ReviewHost host;

        Watched(ReviewHost host) {
            this.host = host;
        }

        private <T> Reading<T> watched(Reading<T> reading) {
            return store -> {
                if (EventQueue.isDispatchThread()) {
                    readOnEventThread.incrementAndGet();
                }
                return reading.of(store);
            };
        }

        @Override
        public List<Path> workspaces() {
            return host.workspaces();
        }

        @Override
        public <T> void read(Path place, Reading<T> reading, Consumer<T> done, Consumer<String> failed) {
            host.read(place, watched(reading), done, failed);
        }

        @Override
        public <T> void study(Path place, Reading<T> reading, Consumer<T> done, Consumer<String> failed) {
            host.study(place, watched(reading), done, failed);
        }

        @Override
        public void keep(SeenView view, SeenView.Form form, Consumer<Path> done, Consumer<String> failed) {
            host.keep(view, form, done, failed);
        }

        @Override
        public void judge(Path workspace, long session, Word word, Consumer<Said> done, Consumer<String> failed) {
            host.judge(workspace, session, word, done, failed);
        }

        @Override
        public Optional<Said> word(SessionStore store, long session) throws StoreException {
            return host.word(store, session);
        }

        @Override
        public Optional<String> remembered(Path place, SessionStore store, SessionStore.Summary session)
                throws StoreException {
            return host.remembered(place, store, session);
        }

        @Override
        public void remember(Path place, SessionStore store, SessionStore.Summary session, String cameOut)
                throws StoreException {
            host.remember(place, store, session, cameOut);
        }

        @Override
        public void note(Path place, long session, Note note, Runnable done, Consumer<String> failed) {
            host.note(place, session, note, done, failed);
        }
    }
}
