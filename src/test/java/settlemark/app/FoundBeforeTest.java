package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What was found of a workspace's jobs is there at the next start, for the same session and program only. */
final class FoundBeforeTest {
    @TempDir
    private Path folder = Path.of("");

    private FoundBefore next(String program) {
        return new FoundBefore(folder.resolve("w.settlemark"), program);
    }

    private Path file() {
        return folder.resolve("w.settlemark.found");
    }

    @Test
    void itIsThereAtTheNextStart() {
        next("1").keep("key", "mark", "INSIDE;INSIDE;true");
        assertThat(next("1").of("key", "mark")).contains("INSIDE;INSIDE;true");
    }

    @Test
    void anotherMarkOrKeyOrProgramKnowsNothing() {
        next("1").keep("key", "mark", "x");
        assertThat(next("1").of("key", "other")).isEmpty();
        assertThat(next("1").of("other", "mark")).isEmpty();
        assertThat(next("2").of("key", "mark")).isEmpty();
    }

    @Test
    void whatCameLaterCounts() {
        FoundBefore before = next("1");
        before.keep("key", "mark", "first");
        before.keep("key", "mark", "second");
        assertThat(next("1").of("key", "mark")).contains("second");
    }

    @Test
    void aLineThatWasCutOffOrGarbledCountsForNothingAndHurtsNoOther() throws IOException {
        FoundBefore before = next("1");
        before.keep("a", "mark", "first");
        before.keep("b", "mark", "second");
        String text = Files.readString(file());
        for (int cut = 1; cut < text.length() - text.lastIndexOf('\n'); cut++) {
            Files.writeString(file(), text.substring(0, text.length() - cut));
            FoundBefore after = next("1");
            assertThat(after.of("b", "mark")).as("cut %d", cut).isEmpty();
            assertThat(after.of("a", "mark")).contains("first");
            after.keep("c", "mark", "third");
            assertThat(next("1").of("c", "mark")).contains("third");
        }
        Files.write(file(), new byte[] {'\n', (byte) 0xff, 0, '\t', '\n'}, StandardOpenOption.APPEND);
        assertThat(next("1").of("a", "mark")).contains("first");
    }

    @Test
    void whatOtherProgramsFoundGoesOnceItIsTheMost() throws IOException {
        for (int i = 0; i < 3; i++) {
            next("1").keep("key" + i, "mark", "x");
        }
        next("2").keep("mine", "mark", "y");
        assertThat(next("2").of("mine", "mark")).contains("y");
        assertThat(Files.readString(file())).doesNotContain("key0").contains("mine");
    }

    @Test
    void aProgramOfLooseClassesKeepsNothing() {
        next("").keep("key", "mark", "x");
        assertThat(file()).doesNotExist();
        assertThat(next("").of("key", "mark")).isEmpty();
        assertThat(FoundBefore.program())
                .as("these tests run from loose classes")
                .isEmpty();
    }

    @Test
    void whereItCannotBeWrittenNothingIsKeptAndNothingFails() throws IOException {
        Files.createDirectories(file().resolve("in the way"));
        FoundBefore now = next("1");
        now.keep("key", "mark", "x");
        assertThat(now.of("key", "mark")).contains("x");
        assertThat(next("1").of("key", "mark")).isEmpty();
    }
}
