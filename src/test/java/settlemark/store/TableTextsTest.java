package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.session.CheckReport;
import settlemark.session.Damage;
import settlemark.session.RepairReport;

/** One letter of what the file says of a table's making is another: the rows are as they were, and come out again. */
final class TableTextsTest {
    @TempDir
    Path folder;

    private final WorkspaceTools tools = new WorkspaceTools(Fixtures::profile);

    private Path file() {
        return folder.resolve("w.settlemark");
    }

    @BeforeEach
    void copy() throws Exception {
        Workspace.fillShort(file());
    }

    private void change(String table, String text, String into) throws Exception {
        Workspace.sql(
                file(),
                "PRAGMA writable_schema = 1",
                "UPDATE sqlite_schema SET sql = replace(sql, '" + text + "', '" + into + "') WHERE name = '" + table
                        + "'");
    }

    @ParameterizedTest
    @CsvSource({
        "sample_block, low_nanos INTEGER, low_nqnos INTEGER",
        "sample_block, probe INTEGER NOT, prabe INTEGER NOT",
        "sample_block, CREATE TABLE sample, CREATE TABLE sambkle",
        "summary, level INTEGER, levem INTEGER",
        "frame, next_sequence INTEGER, next_seqwence INTEGER",
        "note, written_at TEXT, writuen_at TEXT",
        "probe, samples INTEGER, samqles INTEGER",
        "session, plate TEXT, plaxe TEXT",
        "channel_reading, zero_offset REAL, zaro_offset REAL",
        "attachment, media_type TEXT, medaa_type TEXT",
        "setting, value TEXT, valu$ TEXT"
    })
    void aColumnsNameWithAnotherLetterIsSaidAndMadeAgain(String table, String right, String wrong) throws Exception {
        change(table, right, wrong);
        byte[] before = Files.readAllBytes(file());
        CheckReport check = tools.check(file());
        assertThat(check.damage())
                .extracting(Damage::words)
                .anyMatch(w -> w.startsWith("table " + table + " is not made as it must be: line ")
                        && w.contains(" is \"" + wrong)
                        && w.contains("must be \"" + right));
        RepairReport report = tools.repair(file(), folder.resolve("repaired.settlemark"), Workspace.NOW);
        assertThat(report.steps()).anyMatch(s -> s.contains("the text of table " + table));
        assertThat(report.lost()).isEmpty();
        assertThat(report.saved().stream()
                        .mapToLong(RepairReport.Saved::samples)
                        .sum())
                .isEqualTo(Workspace.samples(Workspace.SHORT_SECONDS));
        assertThat(tools.check(folder.resolve("repaired.settlemark")).damage()).isEmpty();
        assertThat(Files.readAllBytes(file())).isEqualTo(before);
    }

    @Test
    void whatCannotBeLookedAtForItIsSaidToo() throws Exception {
        change("sample_block", "low_nanos", "low_nbnos");
        List<String> words =
                tools.check(file()).damage().stream().map(Damage::words).toList();
        assertThat(words).anyMatch(w -> w.contains("no such column") && w.contains("store repair"));
    }

    @Test
    void aFormerFormatsTableIsSaidAndMadeAgainAsWell() throws Exception {
        Files.delete(file());
        FormerFormatTest.write("/store/format-2.sql", file());
        assertThat(tools.check(file()).damage()).isEmpty();
        change("event", "time_nanos", "time_nqnos");
        assertThat(tools.check(file()).damage())
                .extracting(Damage::words)
                .anyMatch(w -> w.startsWith("table event is not made as it must be") && w.contains("time_nqnos"));
        RepairReport report = tools.repair(file(), folder.resolve("repaired.settlemark"), Workspace.NOW);
        assertThat(report.steps())
                .anyMatch(s -> s.contains("the text of table event"))
                .anyMatch(s -> s.contains("from format 2"));
        assertThat(report.lost()).isEmpty();
    }
}
