package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import settlemark.codec.PackedSamples;
import settlemark.session.CheckReport;
import settlemark.session.Note;
import settlemark.session.RawBytes;
import settlemark.session.RepairReport;
import settlemark.session.SampleBlock;
import settlemark.session.SessionEvent;
import settlemark.session.StoreException;
import settlemark.session.WriteBatch;

/** A damaged workspace is left as it is, and all that can be read of it is in the new one, which passes the check. */
final class RepairTest {
    private static final long ALL_SAMPLES = Workspace.samples(Workspace.SHORT_SECONDS);
    private static final long ALL_OF_THE_LONG = Workspace.samples(Workspace.SECONDS);

    @TempDir
    Path folder;

    private final WorkspaceTools tools = new WorkspaceTools(Fixtures::profile);

    private Path file() {
        return folder.resolve("w.settlemark");
    }

    private Path repaired() {
        return folder.resolve("repaired.settlemark");
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

    /** Repairs, and holds what every repair must keep to. */
    private RepairReport repair() throws Exception {
        byte[] before = Files.readAllBytes(file());
        RepairReport report = tools.repair(file(), repaired(), Workspace.NOW);
        assertThat(Files.readAllBytes(file())).isEqualTo(before);
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left.map(p -> p.getFileName().toString()))
                    .allMatch(n -> n.matches("(w|repaired)\\.settlemark(\\.lock)?"));
        }
        CheckReport check = tools.check(repaired());
        assertThat(check.damage()).isEmpty();
        long saved =
                report.saved().stream().mapToLong(RepairReport.Saved::samples).sum();
        assertThat(check.contents().samples()).isEqualTo(saved);
        everySampleIsOneThatWasStored();
        return report;
    }

    /** Whatever is in the new one was in the old one, at the same place. */
    private void everySampleIsOneThatWasStored() throws Exception {
        try (SqliteStore store = SqliteStore.openForReading(repaired(), Fixtures::profile)) {
            for (var session : store.sessions()) {
                int probes = store.header(session.number()).probes().size();
                for (int probe = 0; probe < probes; probe++) {
                    for (int channel = 0; channel < 2; channel++) {
                        matches(store.samples(session.number(), probe, channel, 0, Long.MAX_VALUE));
                    }
                }
            }
        }
    }

    private static void matches(SampleBlock block) {
        long last = -1;
        for (int i = 0; i < block.size(); i++) {
            long tenth = block.timesNanos()[i] / (Fixtures.SECOND / 10);
            if (tenth <= last || block.values()[i] != Fixtures.value(block.probe(), block.channel(), tenth)) {
                throw new AssertionError("sample " + i + " at " + tenth + " is " + block.values()[i]);
            }
            last = tenth;
        }
    }

    @Test
    void aWholeWorkspaceIsSavedWithNothingLost() throws Exception {
        copyLong();
        RepairReport report = repair();
        assertThat(report.lost()).isEmpty();
        assertThat(report.steps()).isEmpty();
        assertThat(report.saved())
                .extracting(RepairReport.Saved::of)
                .containsExactly("session 1", "session 2", "session 3", "rereading 1 of session 1");
        assertThat(report.saved().get(0))
                .isEqualTo(new RepairReport.Saved(
                        "session 1",
                        40L * Workspace.SECONDS,
                        40L * Workspace.SECONDS,
                        20L * Workspace.SECONDS,
                        Workspace.SECONDS / 5));
        try (SqliteStore before = SqliteStore.openForReading(file(), Fixtures::profile);
                SqliteStore after = SqliteStore.openForReading(repaired(), Fixtures::profile)) {
            assertThat(after.sessions()).isEqualTo(before.sessions());
            for (int session = 1; session <= 3; session++) {
                assertThat(after.header(session)).isEqualTo(before.header(session));
                assertThat(events(after, session)).isEqualTo(events(before, session));
                assertThat(after.readings(session)).isEqualTo(before.readings(session));
                assertThat(after.rawBytes(session)).isEqualTo(before.rawBytes(session));
                assertThat(after.papers().notes(session))
                        .isEqualTo(before.papers().notes(session));
                assertThat(after.papers().attachments(session))
                        .isEqualTo(before.papers().attachments(session));
            }
            assertThat(after.rereadings().of(1)).isEqualTo(before.rereadings().of(1));
            assertThat(after.settings().all()).isEqualTo(before.settings().all());
            assertThat(same(after.samples(1, 1, 1, 0, Long.MAX_VALUE), before.samples(1, 1, 1, 0, Long.MAX_VALUE)))
                    .isTrue();
        }
    }

    private static boolean same(SampleBlock a, SampleBlock b) {
        return Arrays.equals(a.timesNanos(), b.timesNanos())
                && Arrays.equals(a.values(), b.values())
                && Arrays.equals(a.statuses(), b.statuses());
    }

    private static List<SessionEvent> events(SqliteStore store, long session) throws StoreException {
        List<SessionEvent> events = new ArrayList<>();
        store.events(session, events::add);
        return events;
    }

    @Test
    void aSessionThatWasCutOffGoesOnInTheNewOne() throws Exception {
        repair();
        try (SqliteStore store = Fixtures.open(repaired())) {
            for (int n = 500; n < 900; n += 5) {
                store.append(2, Workspace.minute(n, 5));
            }
            store.end(2, 900 * Fixtures.SECOND);
            assertThat(store.sampleCount(2, 1)).isEqualTo(20L * 900);
        }
        assertThat(tools.check(repaired()).damage()).isEmpty();
    }

    @Test
    void aDamagedChannelOfABlockCostsItselfAndIsCounted() throws Exception {
        Workspace.damageBlock(file(), "block", "sample_block WHERE session = 1 AND probe = 1 AND number = 1");
        RepairReport report = repair();
        assertThat(report.saved().get(0).samples()).isEqualTo(40L * Workspace.SHORT_SECONDS - Sealing.ROWS);
        assertThat(report.saved().get(0).samplesBefore()).isEqualTo(40L * Workspace.SHORT_SECONDS);
        assertThat(report.lost())
                .anyMatch(
                        d -> d.toString().matches("session 1, probe air, channel (left|right), 409.* to 819.*digest.*"))
                .anyMatch(d -> d.words().equals("4096 of 18000 samples are lost in all"))
                .allMatch(d -> d.of().equals("session 1"));
        try (SqliteStore store = SqliteStore.openForReading(repaired(), Fixtures::profile)) {
            assertThat(store.rawBytes(1)).isEqualTo(RawBytes.KEPT);
            assertThat(store.papers().notes(1))
                    .hasSize(2)
                    .last()
                    .extracting(Note::text)
                    .asString()
                    .startsWith("This workspace was repaired. Lost of this session:\nsession 1, probe air");
        }
    }

    @Test
    void lostEventsAreSaidAndNoRecordCanBeMadeOfTheSession() throws Exception {
        Workspace.sql(file(), "UPDATE event_block SET block = x'00' WHERE session = 1 AND first_sequence = 0");
        RepairReport report = repair();
        assertThat(report.lost()).anyMatch(d -> d.words().contains("no record can be made of the session"));
        assertThat(report.saved().get(0).samples()).isEqualTo(40L * Workspace.SHORT_SECONDS);
        try (SqliteStore store = SqliteStore.openForReading(repaired(), Fixtures::profile)) {
            assertThat(store.rawBytes(1)).isEqualTo(RawBytes.DROPPED);
            assertThat((long) events(store, 1).size())
                    .isEqualTo(report.saved().get(0).events())
                    .isPositive()
                    .isLessThan(20L * Workspace.SHORT_SECONDS);
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "UPDATE session SET plan = '{}' WHERE number = 2| session 2 | plan and plate",
                "UPDATE session SET settle = '[' WHERE number = 2| session 2 | how its readings settle",
                "UPDATE session SET started_at = 'yesterday' WHERE number = 3| session 3 | when and where it began",
                "UPDATE probe SET roles = '{' WHERE session = 3 AND position = 0| session 3 | the roles",
                "DELETE FROM session WHERE number = 3| session 3 | its header",
                "UPDATE frame SET samples = x'00' WHERE session = 2 AND number = 97| session 2 | stored last",
                "UPDATE frame SET events = x'00' WHERE session = 2 AND number = 97| session 2 | stored last",
                "DELETE FROM frame WHERE session = 2| session 2, probe gauge | samples are lost in all",
                "DELETE FROM sample_block WHERE session = 1 AND number = 1| session 1, probe gauge | 1 blocks of samples",
                "UPDATE channel_reading SET role = 'CHIMNEY' WHERE session = 2| session 2 | all readings",
                "UPDATE rejected SET probe = 9 WHERE session = 2| session 2 | refused frame",
                "UPDATE attachment SET content = x'09'| session 2 | attachment",
                "UPDATE note SET written_at = 'then'| session 1 | note",
                "UPDATE profile SET text = replace(text, 'Air', 'Oil') WHERE id = 'air'| profile air | damaged",
                "UPDATE reread_probe SET roles = '{'| rereading 1 of session 1 | cannot be saved",
                "DELETE FROM rereading| rereading 1, probe number 0 | without a header",
                "DELETE FROM reread_probe WHERE position = 1| rereading 1 of session 1 | cannot be saved",
                "DELETE FROM profile WHERE id = 'air'| session 1 | lost",
                "DELETE FROM probe WHERE session = 3 AND position = 0| session 3 | probe number 0",
                "DELETE FROM probe WHERE session = 3| session 3 | lost",
                "UPDATE sample_block SET number = -4 WHERE session = 1 AND probe = 0 AND number = 1"
                        + "| session 1, probe gauge | samples are lost in all",
                "UPDATE sample_block SET probe = -1 WHERE session = 1 AND probe = 1 AND number = 1"
                        + "| session 1 | samples are lost in all",
                "UPDATE sample_block SET block = (SELECT block FROM sample_block b WHERE b.session = 1 AND b.probe = 0"
                        + " AND b.number = 1) WHERE session = 1 AND probe = 1 AND number = 1"
                        + "| session 1, probe air | samples are lost in all",
                "UPDATE rejected SET probe = -1 WHERE session = 2 AND batch = 0| session 2 | refused frame"
            })
    void whatCannotBeUnderstoodIsGivenUpAndSaid(String change, String place, String words) throws Exception {
        Workspace.sql(file(), "PRAGMA foreign_keys = 0", change.strip());
        RepairReport report = repair();
        assertThat(report.lost())
                .anyMatch(
                        d -> d.toString().startsWith(place.strip()) && d.words().contains(words.strip()));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "sample_block| UPDATE sample_block SET block = NULL WHERE session = 1 AND number = 1 AND probe = 0"
                        + "| session 1, probe gauge, 409 | samples cannot be read",
                "frame| UPDATE frame SET samples = NULL WHERE session = 2 AND number = 98| session 2 | a frame",
                "event_block| UPDATE event_block SET block = NULL WHERE session = 1 AND first_sequence = 0"
                        + "| session 1, 0.000 s | cannot be read",
                "session| UPDATE session SET zone = NULL WHERE number = 3| session 3 | its header",
                "probe| UPDATE probe SET scheme = NULL WHERE session = 3 AND position = 1| session 3 | a probe's row",
                "probe| UPDATE probe SET profile = NULL WHERE session = 3 AND position = 1| session 3 | its profile is lost",
                "profile| UPDATE profile SET id = NULL, text = 'x' WHERE id = 'air'| profile without a name | damaged",
                "rereading| UPDATE rereading SET number = NULL| a rereading whose row is damaged | column 2",
                "rereading| UPDATE rereading SET made_at = NULL| rereading 1 of session 1 | cannot be saved",
                "reread_probe| UPDATE reread_probe SET profile = NULL WHERE position = 0"
                        + "| rereading 1 of session 1 | cannot be saved",
                "reread_probe| UPDATE reread_probe SET samples = NULL WHERE position = 0"
                        + "| rereading 1 of session 1 | cannot be saved",
                "reading| UPDATE reading SET step = NULL WHERE session = 2| session 2 | reading that does not fit",
                "rejected| UPDATE rejected SET reason = NULL WHERE session = 2| session 2 | refused frame that does not fit",
                "note| UPDATE note SET session = NULL| a row of table note | belongs to no session",
                "setting| UPDATE setting SET value = NULL| setting that cannot be understood | column 1",
                "setting| UPDATE setting SET value = '{'| setting that cannot be understood |''"
            })
    void whatNoLongerHoldsWhatItsTableDemandsIsGivenUpAndSaid(String table, String change, String place, String words)
            throws Exception {
        Workspace.against(file(), table.strip(), change.strip());
        RepairReport report = repair();
        assertThat(report.lost())
                .anyMatch(d ->
                        d.toString().startsWith(place.strip()) && d.toString().contains(words.strip()));
    }

    @ParameterizedTest
    @CsvSource({"7, 0", "1, 5"})
    void samplesOfWhatTheSessionDoesNotHaveAreLeftOutAndSaid(int probe, int channel) throws Exception {
        SampleBlock strange =
                new SampleBlock(probe, channel, new long[] {600 * Fixtures.SECOND}, new double[] {1}, new byte[1]);
        Workspace.frame(file(), 2, PackedSamples.pack(List.of(strange)));
        RepairReport report = repair();
        assertThat(report.lost())
                .anyMatch(d ->
                        d.of().equals("session 2") && d.words().equals("1 samples of a channel that is not there"));
    }

    @Test
    void aSessionOfWhichNothingWasStoredYetIsKept() throws Exception {
        try (SqliteStore store = Fixtures.open(file())) {
            store.begin(Fixtures.log("just begun"));
        }
        RepairReport report = repair();
        assertThat(report.lost()).isEmpty();
        assertThat(report.saved()).contains(new RepairReport.Saved("session 4", 0, 0, 0, 0));
        try (SqliteStore store = Fixtures.open(repaired())) {
            store.append(4, Fixtures.second(0));
            assertThat(store.sampleCount(4, 0)).isEqualTo(20);
        }
    }

    @Test
    void withoutItsProfilesNoSessionCanBeSavedAndThatIsSaid() throws Exception {
        Workspace.wipe(
                file(),
                (int) Workspace.number(file(), "SELECT rootpage FROM sqlite_schema WHERE name = 'profile'"),
                0,
                Workspace.PAGE,
                0x5a);
        RepairReport report = repair();
        assertThat(report.saved()).isEmpty();
        assertThat(report.lost())
                .anyMatch(d -> d.words().equals("profiles from one on, read forwards"))
                .anyMatch(d -> d.words().equals("profiles from one on, read backwards"))
                .anyMatch(d -> d.of().equals("session 1") && d.words().contains("its profile is lost"))
                .anyMatch(d -> d.toString()
                        .matches("session 1, probe number 0, 0.000 s to .*blocks of samples cannot be saved.*"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"sample_block", "frame", "event_block", "summary", "reading", "rejected", "probe"})
    void aDestroyedLeafPageCostsWhatIsOnIt(String table) throws Exception {
        copyLong();
        List<Integer> leaves = Workspace.pages(file(), table, "leaf");
        Workspace.wipe(file(), leaves.get(leaves.size() / 2), 0, Workspace.PAGE, 0x5a);
        RepairReport report = repair();
        long saved =
                report.saved().stream().mapToLong(RepairReport.Saved::samples).sum();
        if (table.equals("summary")) {
            assertThat(report.lost()).isEmpty();
            assertThat(saved).isEqualTo(ALL_OF_THE_LONG);
        } else {
            assertThat(report.lost()).isNotEmpty();
        }
        if (!table.equals("probe")) {
            assertThat(saved).isGreaterThan(ALL_OF_THE_LONG * 8 / 10);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"sqlite_autoindex_sample_block_1", "sample_block_time", "sqlite_autoindex_event_block_1"})
    void aDestroyedIndexCostsNothing(String index) throws Exception {
        for (int page : Workspace.pages(file(), index, "leaf")) {
            Workspace.wipe(file(), page, 0, Workspace.PAGE, 0x5a);
        }
        RepairReport report = repair();
        assertThat(report.lost()).isEmpty();
        assertThat(report.saved().stream()
                        .mapToLong(RepairReport.Saved::samples)
                        .sum())
                .isEqualTo(ALL_SAMPLES);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 16, the head",
        "0, 100, the head",
        "16, 2, the head",
        "18, 2, the head",
        "28, 4, ''",
        "0, 4096, the first page",
        "90, 400, the first page"
    })
    void aDamagedFirstPageIsMadeAgain(int at, int length, String step) throws Exception {
        Workspace.wipe(file(), 1, at, length, 0x5a);
        RepairReport report = repair();
        assertThat(String.join("; ", report.steps())).contains(step);
        assertThat(report.lost()).isEmpty();
        assertThat(report.saved().stream()
                        .mapToLong(RepairReport.Saved::samples)
                        .sum())
                .isEqualTo(ALL_SAMPLES);
    }

    @Test
    void aDestroyedListOfTablesIsMadeAgain() throws Exception {
        List<Integer> leaves = Workspace.pages(file(), "sqlite_schema", "leaf");
        assertThat(leaves).isNotEmpty().doesNotContain(1);
        for (int leaf : leaves) {
            Workspace.wipe(file(), leaf, 0, Workspace.PAGE, 0x5a);
        }
        RepairReport report = repair();
        assertThatThrownBy(() -> SqliteStore.openForReading(file(), Fixtures::profile))
                .isInstanceOf(StoreException.class);
        assertThatThrownBy(() -> tools.check(file()))
                .isInstanceOfSatisfying(
                        StoreException.class, e -> assertThat(e.kind()).isEqualTo(StoreException.Cause.DAMAGED));
        assertThat(String.join("; ", report.steps())).contains("the list of tables");
        assertThat(report.lost()).isEmpty();
    }

    @Test
    void aFileThatWasCutOffKeepsWhatIsBeforeTheCut() throws Exception {
        copyLong();
        try (FileChannel channel = FileChannel.open(file(), StandardOpenOption.WRITE)) {
            channel.truncate(channel.size() * 3 / 4 / Workspace.PAGE * Workspace.PAGE + 1000);
        }
        RepairReport report = repair();
        assertThat(report.lost()).isNotEmpty();
        assertThat(report.saved().stream()
                        .mapToLong(RepairReport.Saved::samples)
                        .sum())
                .isBetween(ALL_OF_THE_LONG / 4, ALL_OF_THE_LONG);
    }

    @Test
    void whatIsInTheLogAloneIsSavedToo() throws Exception {
        Path live = folder.resolve("live.settlemark");
        Files.copy(file(), live);
        try (SqliteStore store = Fixtures.open(live);
                Connection reader = Workspace.raw(live)) {
            Connections.run(reader, "BEGIN");
            Schema.number(reader, "SELECT count(*) FROM session");
            store.append(2, Workspace.minute(500, 5));
            Files.copy(live, file(), StandardCopyOption.REPLACE_EXISTING);
            Files.copy(Connections.log(live), Connections.log(file()));
        }
        Files.delete(live);
        Files.delete(live.resolveSibling("live.settlemark.lock"));
        byte[] log = Files.readAllBytes(Connections.log(file()));
        RepairReport report = tools.repair(file(), repaired(), Workspace.NOW);
        assertThat(report.lost()).isEmpty();
        assertThat(report.saved().get(1).samples()).isEqualTo(40L * 505);
        assertThat(Files.readAllBytes(Connections.log(file()))).isEqualTo(log);
        assertThat(tools.check(repaired()).damage()).isEmpty();
    }

    @Test
    void bytesAnywhereAreRepairedOrRefusedAndNothingWrongComesOut() throws Exception {
        long seed = System.nanoTime();
        System.out.println("seed " + seed);
        Random random = new Random(seed);
        byte[] whole = Files.readAllBytes(file());
        int lossless = 0;
        for (int trial = 0; trial < 6; trial++) {
            byte[] damaged = whole.clone();
            for (int hit = 0; hit < 3; hit++) {
                byte[] noise = new byte[1 + random.nextInt(3000)];
                random.nextBytes(noise);
                int at = random.nextInt(damaged.length - noise.length);
                System.arraycopy(noise, 0, damaged, at, noise.length);
            }
            Files.write(file(), damaged);
            for (String end : List.of("", "-wal", "-shm")) {
                Files.deleteIfExists(folder.resolve("repaired.settlemark" + end));
            }
            RepairReport report = repair();
            lossless += report.lost().isEmpty() ? 1 : 0;
        }
        System.out.println("6 damaged files repaired, " + lossless + " of them without loss");
        assertThat(lossless).isLessThan(6);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void formerFormatsAreBroughtUpAndSaved(int format) throws Exception {
        Files.delete(file());
        FormerFormatTest.write("/store/format-" + format + ".sql", file());
        byte[] before = Files.readAllBytes(file());
        RepairReport report = tools.repair(file(), repaired(), Workspace.NOW);
        assertThat(report.steps())
                .singleElement()
                .asString()
                .contains("from format " + format + " to " + Schema.MIGRATIONS.size());
        assertThat(report.lost()).isEmpty();
        assertThat(report.saved()).isNotEmpty();
        assertThat(Files.readAllBytes(file())).isEqualTo(before);
        CheckReport former = tools.check(file());
        assertThat(former.damage()).isEmpty();
        assertThat(former.format()).isEqualTo(format);
        CheckReport now = tools.check(repaired());
        assertThat(now.damage()).isEmpty();
        assertThat(now.contents().events()).isEqualTo(former.contents().events());
        // Some also had a rereading that was cut off, which nothing lists.
        assertThat(now.contents().samples())
                .isBetween(former.contents().samples() - 40, former.contents().samples());
    }

    @Test
    void whatIsNoWorkspaceIsRefusedAndNothingIsMade() throws Exception {
        Workspace.sql(file(), "PRAGMA user_version = 99", "ALTER TABLE sample_block RENAME TO other");
        refused(StoreException.Cause.DAMAGED, "has format 99");
        Files.writeString(file(), "Dear customer, ".repeat(400), StandardCharsets.UTF_8);
        refused(StoreException.Cause.DAMAGED, "no table can be found in it");
        Files.delete(file());
        Workspace.sql(file(), "CREATE TABLE letters (text)");
        refused(StoreException.Cause.DAMAGED, "another program");
        Files.delete(file());
        refused(StoreException.Cause.FAULT, "no such file");
    }

    private void refused(StoreException.Cause kind, String words) throws Exception {
        assertThatThrownBy(() -> tools.repair(file(), repaired(), Workspace.NOW))
                .isInstanceOfSatisfying(
                        StoreException.class, e -> assertThat(e.kind()).isEqualTo(kind))
                .hasMessageContaining(words);
        assertThat(repaired()).doesNotExist();
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left.map(p -> p.getFileName().toString())).noneMatch(n -> n.startsWith("."));
        }
    }

    @Test
    void whileAProgramWritesNothingIsRepaired() throws Exception {
        try (SqliteStore store = Fixtures.open(file())) {
            refused(StoreException.Cause.FAULT, "is writing to it");
            store.append(2, new WriteBatch(10_000, List.of(), List.of(), List.of(), List.of(), 6));
        }
    }

    @Test
    void aFileThatIsThereIsNotOverwritten() throws Exception {
        Files.writeString(repaired(), "mine", StandardCharsets.UTF_8);
        assertThatThrownBy(() -> tools.repair(file(), repaired(), Workspace.NOW))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("is there already");
        assertThat(repaired()).hasContent("mine");
    }
}
