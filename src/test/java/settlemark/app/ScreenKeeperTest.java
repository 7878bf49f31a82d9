package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.ui.JobPlace;
import settlemark.ui.Language;
import settlemark.ui.ScreenState;

/** What an open window leaves for the next one where its program is cut off. */
class ScreenKeeperTest {
    private static final ScreenState TYPED = new ScreenState(
            true,
            1,
            true,
            3.5,
            Optional.of(new ScreenState.Place(10, 20, 1280, 720)),
            Language.GERMAN,
            Map.of("place", "Ash L", "manifold.low", "1."),
            Map.of("frames", "a501\na502", "typed.scale", "0."),
            "plate",
            Optional.of(new JobPlace(
                    "2026-03-14-0931-ash-lane",
                    "found-low",
                    true,
                    "keys",
                    "NOTE",
                    Map.of("field#1", "screw \"lo"),
                    30)));

    @TempDir
    private Path folder = Path.of("");

    private final StringWriter err = new StringWriter();
    private ScreenState now = TYPED;

    private Path workspace() {
        return folder.resolve("data").resolve("own.settlemark");
    }

    private ScreenKeeper keeper() {
        return new ScreenKeeper(() -> now, workspace(), new PrintWriter(err, true));
    }

    @Test
    void allOfItIsLeftByAProgramThatIsCutOffAndTheWorkspaceIsNotTouched() {
        ScreenKeeper keeper = keeper();
        keeper.keepNow();
        assertThat(ScreenKeeper.left(workspace())).contains(TYPED);
        now = ScreenState.NONE;
        keeper.keepNow();
        assertThat(ScreenKeeper.left(workspace())).contains(ScreenState.NONE);
        assertThat(workspace()).doesNotExist();
        keeper.close();
    }

    @Test
    void aWindowThatIsClosedInOrderLeavesNothingAndKeepsNothingMore() {
        ScreenKeeper keeper = keeper();
        keeper.keepNow();
        keeper.close();
        keeper.keepNow();
        assertThat(ScreenKeeper.left(workspace())).isEmpty();
        assertThat(folder.resolve("data")).isEmptyDirectory();
    }

    @Test
    void aFileThatWasCutOffItselfIsAWindowAsAtFirst() throws Exception {
        ScreenKeeper keeper = keeper();
        keeper.keepNow();
        Path file = folder.resolve("data").resolve("own.settlemark.screen");
        Files.writeString(file, Files.readString(file).substring(0, 40));
        assertThat(ScreenKeeper.left(workspace())).contains(ScreenState.NONE);
        keeper.close();
    }

    @Test
    void thatItCannotBeKeptIsSaidOnce() throws Exception {
        Files.writeString(folder.resolve("data"), "a file where the folder must be");
        ScreenKeeper keeper = keeper();
        keeper.keepNow();
        keeper.keepNow();
        assertThat(err.toString().lines())
                .singleElement()
                .asString()
                .startsWith("settlemark: what is typed is not kept for a restart: ");
        keeper.close();
    }
}
