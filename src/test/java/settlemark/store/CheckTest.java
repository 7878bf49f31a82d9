package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.codec.PackedSamples;
import settlemark.session.CheckReport;
import settlemark.session.Damage;
import settlemark.session.SampleBlock;
import settlemark.session.Span;
import settlemark.session.StoreException;

/** Whatever is changed in a workspace is found, and said with its session, channel and time where it has one. */
final class CheckTest {
    @TempDir
    Path folder;

    private Path file() {
        return folder.resolve("w.settlemark");
    }

    @BeforeEach
    void copy() throws Exception {
        Workspace.fillShort(file());
    }

    /** One with statistics above the blocks', and several pages of each table. */
    private void copyLong() throws Exception {
        Files.delete(file());
        Workspace.fill(file());
    }

    private CheckReport check() throws StoreException {
        return new WorkspaceTools(Fixtures::profile).check(file());
    }

    private List<String> damage() throws StoreException {
        CheckReport report = check();
        assertThat(report.whole()).isFalse();
        return report.damage().stream().map(Damage::toString).toList();
    }

    @Test
    void aWholeWorkspaceIsWholeAndCountedAndNotTouched() throws Exception {
        copyLong();
        byte[] before = Files.readAllBytes(file());
        CheckReport report = check();
        assertThat(report.damage()).isEmpty();
        assertThat(report.whole()).isTrue();
        assertThat(report.format()).isEqualTo(Schema.MIGRATIONS.size());
        assertThat(report.contents())
                .isEqualTo(new CheckReport.Contents(
                        3,
                        1,
                        Workspace.samples(Workspace.SECONDS),
                        20L * (Workspace.SECONDS + 500),
                        (Workspace.SECONDS + 1500) / 5,
                        1,
                        1));
        assertThat(Files.readAllBytes(file())).isEqualTo(before);
        assertThat(Workspace.number(file(), "SELECT count(*) FROM summary")).isPositive();
        assertThat(Workspace.number(file(), "SELECT count(*) FROM frame WHERE session = 2"))
                .isGreaterThan(1);
    }

    @Test
    void damageInABlockIsSaidWithSessionChannelAndTime() throws Exception {
        copyLong();
        Workspace.damageBlock(file(), "block", "sample_block WHERE session = 1 AND probe = 1 AND number = 2");
        assertThat(check().damage()).anySatisfy(d -> {
            assertThat(d.of()).isEqualTo("session 1");
            assertThat(d.probe()).isEqualTo("air");
            assertThat(d.channel()).isIn("left", "right");
            assertThat(d.span()).contains(new Span(Fixtures.time(819, 2), Fixtures.time(1228, 7)));
            assertThat(d.words()).contains("digest");
        });
        assertThat(damage()).allMatch(d -> d.startsWith("session 1, probe air"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "DELETE FROM sample_block WHERE session = 1 AND probe = 0 AND number = 1"
                        + "| session 1, probe gauge, 409.5 | block 1 of samples is missing",
                "DELETE FROM sample_block WHERE session = 1 AND probe = 0 AND number = 1"
                        + "| session 1, probe gauge | 18000 samples were stored, and 9808 can be read",
                "UPDATE sample_block SET number = 100 WHERE session = 1 AND probe = 0 AND number = 1"
                        + "| session 1, probe gauge | missing",
                "UPDATE sample_block SET high_nanos = high_nanos - 1 WHERE session = 1 AND probe = 1 AND number = 0"
                        + "| session 1, probe air | the row says that the block goes from",
                "UPDATE sample_block SET summary = (SELECT summary FROM sample_block b WHERE b.session = 1 AND"
                        + " b.probe = 0 AND b.number = 1) WHERE session = 1 AND probe = 0 AND number = 0"
                        + "| session 1, probe gauge, channel port-1, 0.000 s | not those of the samples",
                "UPDATE sample_block SET block = x'00' WHERE session = 3 AND probe = 0 AND number = 0"
                        + "| session 3, probe gauge | no head",
                "UPDATE sample_block SET probe = 7 WHERE session = 3 AND probe = 1"
                        + "| session 3, probe number 7 | no such probe",
                "DELETE FROM event_block WHERE session = 1 AND first_sequence > 0 AND first_sequence < 20000"
                        + "| session 1 | are missing",
                "UPDATE event_block SET next_sequence = next_sequence + 5 WHERE session = 1 AND first_sequence = 0"
                        + "| session 1 | are there twice",
                "UPDATE event_block SET next_sequence = next_sequence - 5 WHERE session = 1 AND first_sequence = 0"
                        + "| session 1 | stands where event",
                "DELETE FROM probe WHERE session = 1| session 1 | of a probe that the session does not have",
                "ALTER TABLE note ADD COLUMN extra TEXT| table note | is not made as it must be",
                "UPDATE event_block SET block = x'0000' WHERE session = 1 AND first_sequence = 0"
                        + "| session 1, 0.000 s | events 0 to",
                "DELETE FROM frame WHERE session = 2 AND number = (SELECT max(number) - 1 FROM frame WHERE session = 2)"
                        + "| session 2 | what was stored last is not all there",
                "UPDATE frame SET samples = x'00' WHERE session = 2 AND number = (SELECT max(number) FROM frame WHERE"
                        + " session = 2)| session 2 | frame 99",
                "UPDATE frame SET events = x'00' WHERE session = 2 AND number = (SELECT max(number) FROM frame WHERE"
                        + " session = 2)| session 2 | events of what was stored last cannot be read",
                "UPDATE profile SET text = replace(text, 'Air', 'Oil') WHERE id = 'air'| the text of profile air | has digest",
                "UPDATE session SET started_at = 'yesterday' WHERE number = 2| session 2 | header of session 2",
                "UPDATE session SET simulated = 0 WHERE number = 2| session 2 | disagree on whether it is simulated",
                "UPDATE probe SET samples = samples + 1 WHERE session = 2 AND position = 0"
                        + "| session 2, probe gauge | 10001 samples were stored, and 10000 can be read",
                "UPDATE channel_reading SET role = 'CHIMNEY' WHERE session = 2| session 2 | cannot be understood",
                "UPDATE rejected SET probe = 9 WHERE session = 2 AND batch = 0| session 2 | refused frames",
                "UPDATE attachment SET content = x'010204'| session 2 | attachment \"plate.jpg\"",
                "UPDATE note SET written_at = 'then'| a row of table note | date",
                "DELETE FROM session WHERE number = 3| session 3 | no header",
                "DELETE FROM session WHERE number = 3| a row of table probe | that is not there",
                "DELETE FROM rereading| rereading 1 | no header",
                "DELETE FROM reread_sample_block WHERE number = 0"
                        + "| rereading 1 of session 1, probe gauge | block 0 of samples is missing",
                "UPDATE reread_probe SET roles = 'x'| rereading 1 of session 1 | probe",
                "UPDATE sample_block SET low_nanos = low_nanos + 1 WHERE session = 1 AND probe = 1 AND number = 0"
                        + "| session 1, probe air | the row says that the block goes from",
                "UPDATE sample_block SET block = (SELECT block FROM sample_block b WHERE b.session = 1 AND b.probe = 0"
                        + " AND b.number = 0) WHERE session = 1 AND probe = 1 AND number = 0"
                        + "| session 1, probe air, 0.000 s | the block holds samples of another probe",
                "UPDATE sample_block SET number = -4 WHERE session = 1 AND probe = 0 AND number = 0"
                        + "| session 1, probe gauge, 0.000 s | a block has the number -4 where block 0 must come",
                "UPDATE sample_block SET number = 9000000000000 WHERE session = 1 AND probe = 0 AND number = 2"
                        + "| session 1, probe gauge, 819 | a block has the number 9000000000000 where block 2 must come",
                "UPDATE sample_block SET probe = -1 WHERE session = 3 AND probe = 1" + "| session 3 | no such probe",
                "UPDATE event_block SET block = (SELECT block FROM event_block b WHERE b.session = 1 AND"
                        + " b.first_sequence = 0) WHERE session = 2 AND first_sequence = 0| session 2 | stands where event",
                "UPDATE rejected SET probe = -1 WHERE session = 2 AND batch = 0| session 2 | refused frames",
                "DROP INDEX sample_block_time| index sample_block_time | is missing",
                "CREATE TABLE letters (text)| table letters | is no part of a workspace"
            })
    void whatIsChangedIsFound(String change, String place, String words) throws Exception {
        Workspace.sql(file(), "PRAGMA foreign_keys = 0", change.strip());
        assertThat(damage()).anyMatch(d -> d.startsWith(place.strip()) && d.contains(words.strip()));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "DELETE FROM summary WHERE session = 1 AND probe = 1"
                        + "| session 1, probe air, 0.000 s | statistics 0 of level 1 are missing",
                "UPDATE summary SET number = 5 WHERE session = 1 AND probe = 1"
                        + "| session 1, probe air | statistics of level and number 1 5 have no blocks",
                "UPDATE summary SET block = x'1234' WHERE session = 1 AND probe = 1"
                        + "| session 1, probe air | statistics 0 of level 1 cannot be read",
                "UPDATE summary SET block = (SELECT block FROM summary s WHERE s.session = 1 AND s.probe = 0)"
                        + " WHERE session = 1 AND probe = 1"
                        + "| session 1, probe air | statistics 0 of level 1 are not those of the level below",
                "DELETE FROM sample_block WHERE session = 1 AND probe = 1"
                        + "| session 1, probe air | statistics of level and number 1 0 have no blocks"
            })
    void whatIsChangedInStatisticsAboveTheBlocksIsFound(String change, String place, String words) throws Exception {
        copyLong();
        Workspace.sql(file(), "PRAGMA foreign_keys = 0", change.strip());
        assertThat(damage()).anyMatch(d -> d.startsWith(place.strip()) && d.contains(words.strip()));
    }

    @Test
    void anIndexPageThatHidesBlocksIsFoundWithTheHiddenBlocksPlace() throws Exception {
        copyLong();
        int leaf = Workspace.pages(file(), "sample_block_time", "leaf").get(0);
        Workspace.hideLastCell(file(), leaf);
        try (SqliteStore store = SqliteStore.openForReading(file(), Fixtures::profile)) {
            // A question goes through the index and misses a block in silence: that is what the check is for.
            assertThat(store.sampleCount(1, 0)).isEqualTo(20L * Workspace.SECONDS);
        }
        assertThat(check().damage()).anySatisfy(d -> {
            assertThat(d.of()).matches("session [123]");
            assertThat(d.span()).isPresent();
            assertThat(d.words()).contains("an index of table sample_block does not lead to row");
        });
    }

    @ParameterizedTest
    @CsvSource({
        "sqlite_autoindex_event_block_1, session, event_block",
        "reread_sample_block_time, rereading 1, reread_sample_block",
        "sqlite_autoindex_session_1, an index, session"
    })
    void anIndexPageThatHidesARowIsFoundWithItsTable(String index, String place, String table) throws Exception {
        Workspace.hideLastCell(file(), Workspace.pages(file(), index, "leaf").get(0));
        assertThat(damage())
                .anyMatch(
                        d -> d.startsWith(place) && d.contains("an index of table " + table + " does not lead to row"));
    }

    @ParameterizedTest
    @CsvSource({"sqlite_autoindex_summary_1, session 1, summary", "sqlite_autoindex_rereading_1, an index, rereading"})
    void anIndexPageThatHidesARowOfTheLongSessionIsFoundToo(String index, String place, String table) throws Exception {
        copyLong();
        Workspace.hideLastCell(file(), Workspace.pages(file(), index, "leaf").get(0));
        assertThat(damage())
                .anyMatch(
                        d -> d.startsWith(place) && d.contains("an index of table " + table + " does not lead to row"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "sample_block| UPDATE sample_block SET low_nanos = NULL WHERE session = 1 AND number = 1 AND probe = 0"
                        + "| session 1, probe gauge | block 1 of samples is missing",
                "sample_block| UPDATE sample_block SET block = NULL WHERE session = 1 AND number = 1 AND probe = 0"
                        + "| session 1, probe gauge, 409 | samples cannot be read: column 0 must hold bytes, holds nothing",
                "frame| UPDATE frame SET samples = NULL WHERE session = 2 AND number = 98"
                        + "| session 2 | a frame cannot be read",
                "event_block| UPDATE event_block SET block = NULL WHERE session = 1 AND first_sequence = 0"
                        + "| session 1, 0.000 s | cannot be read",
                "session| UPDATE session SET title = NULL WHERE number = 3| NULL value in session.title |''",
                "probe| UPDATE probe SET name = NULL WHERE session = 3| NULL value in probe.name |''",
                "note| UPDATE note SET session = NULL| NULL value in note.session |''",
                "rereading| UPDATE rereading SET number = NULL| a row of table rereading | column 2",
                "attachment| UPDATE attachment SET digest = NULL| a row of table attachment | column 3 must hold text",
                "setting| UPDATE setting SET value = NULL WHERE key = (SELECT min(key) FROM setting)"
                        + "| a row cannot be understood | column 1 must hold text"
            })
    void whatNoLongerHoldsWhatItsTableDemandsIsFound(String table, String change, String place, String words)
            throws Exception {
        Workspace.against(file(), table.strip(), change.strip());
        assertThat(damage()).anyMatch(d -> d.startsWith(place.strip()) && d.contains(words.strip()));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "7| 0| session 2, probe number 7 | it has samples, and session 2 has no such probe",
                "1| 5| session 2, probe air, channel number 5 | its profile has 2 channels"
            })
    void samplesOfWhatTheSessionDoesNotHaveAreFound(int probe, int channel, String place, String words)
            throws Exception {
        SampleBlock strange =
                new SampleBlock(probe, channel, new long[] {600 * Fixtures.SECOND}, new double[] {1}, new byte[1]);
        Workspace.frame(file(), 2, PackedSamples.pack(List.of(strange)));
        assertThat(damage()).anyMatch(d -> d.startsWith(place.strip()) && d.contains(words.strip()));
    }

    @Test
    void aBlockOfMoreSamplesThanAreEverSealedIsFound() throws Exception {
        int many = Sealing.ROWS + 1;
        long[] times = new long[many];
        for (int i = 0; i < many; i++) {
            times[i] = Fixtures.time(i / 10, i % 10);
        }
        SampleBlock large = new SampleBlock(0, 0, times, new double[many], new byte[many]);
        Workspace.block(
                file(), "sample_block", "session = 1 AND probe = 0 AND number = 0", PackedSamples.pack(List.of(large)));
        assertThat(damage())
                .anyMatch(d -> d.startsWith("session 1, probe gauge, channel port-1")
                        && d.contains("holds 4097 samples, and at most 4096 are sealed"));
    }

    @Test
    void anIndexThatSaysAnotherRowIsFound() throws Exception {
        copyLong();
        int leaf = Workspace.pages(file(), "sqlite_autoindex_sample_block_1", "leaf")
                .get(0);
        // The row's number ends the cell at the end of the page.
        Workspace.write(file(), leaf * (long) Workspace.PAGE - 1, new byte[] {99});
        assertThat(damage())
                .anyMatch(d -> d.contains("index of table sample_block") || d.contains("missing from index"));
    }

    @Test
    void aDestroyedPageOfBlocksCostsItsOwnAndTheRestIsStillChecked() throws Exception {
        copyLong();
        List<Integer> leaves = Workspace.pages(file(), "sample_block", "leaf");
        Workspace.wipe(file(), leaves.get(leaves.size() / 2), 0, Workspace.PAGE, 0x5a);
        Workspace.damageBlock(file(), "events", "frame WHERE session = 2 AND number = 97");
        CheckReport report = check();
        assertThat(report.damage())
                .anySatisfy(d -> {
                    assertThat(d.of()).startsWith("session");
                    assertThat(d.probe()).isNotEmpty();
                    assertThat(d.words()).contains("of samples");
                    assertThat(d.span()).isPresent();
                })
                .anySatisfy(d -> assertThat(d.toString()).contains("session 2").contains("stored last"));
        assertThat(report.contents().samples()).isPositive();
        assertThat(report.contents().sessions()).isEqualTo(3);
    }

    @Test
    void aFileThatWasCutOffIsCheckedAsFarAsItGoes() throws Exception {
        try (FileChannel channel = FileChannel.open(file(), StandardOpenOption.WRITE)) {
            channel.truncate(channel.size() * 3 / 4 / Workspace.PAGE * Workspace.PAGE + 1000);
        }
        CheckReport report = check();
        assertThat(report.whole()).isFalse();
        assertThat(report.damage()).isNotEmpty();
        assertThat(report.contents().samples()).isPositive();
    }

    @Test
    void whatIsNoWorkspaceIsRefusedAsSuch() throws Exception {
        Files.writeString(file(), "Dear customer, ".repeat(400), StandardCharsets.UTF_8);
        refused(StoreException.Cause.DAMAGED, "not a workspace");
        Files.write(file(), new byte[0]);
        refused(StoreException.Cause.DAMAGED, "is empty, not a workspace");
        Files.delete(file());
        refused(StoreException.Cause.FAULT, "no such file");
        Files.createDirectory(file());
        refused(StoreException.Cause.FAULT, "is a folder");
    }

    private void refused(StoreException.Cause kind, String words) {
        assertThatThrownBy(this::check)
                .isInstanceOfSatisfying(
                        StoreException.class, e -> assertThat(e.kind()).isEqualTo(kind))
                .hasMessageContaining(words);
    }

    @Test
    void aNewerFormatIsRefused() throws Exception {
        Workspace.sql(file(), "PRAGMA user_version = 99");
        refused(StoreException.Cause.DAMAGED, "has format 99");
    }

    @Test
    void aFileThatAnotherProgramHoldsIsToldSo() throws Exception {
        try (Connection other = Workspace.raw(file())) {
            Connections.run(other, "PRAGMA locking_mode = EXCLUSIVE");
            Connections.run(other, "PRAGMA journal_mode = DELETE");
            Connections.run(other, "BEGIN EXCLUSIVE");
            refused(StoreException.Cause.FAULT, "another program holds it");
        }
    }

    @Test
    void aLinkLeadsToTheWorkspace() throws Exception {
        Path link = Files.createSymbolicLink(folder.resolve("link"), file());
        CheckReport report = new WorkspaceTools(Fixtures::profile).check(link);
        assertThat(report.whole()).isTrue();
        assertThat(report.file()).isEqualTo(file().toRealPath());
    }

    @Test
    void aWriterGoesOnWhileTheCheckRuns() throws Exception {
        try (SqliteStore store = Fixtures.open(file())) {
            for (int n = 500; n < 530; n += 5) {
                store.append(2, Workspace.minute(n, 5));
                CheckReport report = check();
                assertThat(report.damage()).isEmpty();
                assertThat(report.contents().samples()).isEqualTo(40L * (Workspace.SHORT_SECONDS + 500 + 500 + n + 5));
            }
        }
    }

    @Test
    void placesAreSaidAsFarAsTheyAreKnown() {
        Damage damage =
                new Damage("session 3", "gauge", "port-1", Optional.of(new Span(-1_500_000, 2_000_000_000L)), "w");
        assertThat(damage).hasToString("session 3, probe gauge, channel port-1, -0.002 s to 2.000 s: w");
        assertThat(Damage.ofFile("w")).hasToString("w");
        assertThat(Damage.of("session 1", "w")).hasToString("session 1: w");
    }
}
