package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.assertj.core.api.AbstractThrowableAssert;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.session.StoreException;

final class OpeningTest {
    @TempDir
    Path folder;

    private Path file() {
        return folder.resolve("w.settlemark");
    }

    private AbstractThrowableAssert<?, ? extends Throwable> assertRefused(
            ThrowingCallable opening, StoreException.Cause kind) {
        return assertThatThrownBy(opening)
                .isInstanceOfSatisfying(
                        StoreException.class, e -> assertThat(e.kind()).isEqualTo(kind))
                .hasMessageContaining("workspace " + folder);
    }

    private static void sql(Path file, String... changes) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            for (String change : changes) {
                statement.executeUpdate(change);
            }
        }
    }

    @Test
    void whatIsNotADatabaseIsRefusedAndLeftAlone() throws IOException {
        byte[] text = "Dear customer, ".repeat(400).getBytes(StandardCharsets.US_ASCII);
        Files.write(file(), text);
        assertRefused(() -> Fixtures.open(file()), StoreException.Cause.DAMAGED)
                .hasMessageContaining("not a workspace");
        assertRefused(() -> SqliteStore.openForReading(file(), Fixtures::profile), StoreException.Cause.DAMAGED)
                .hasMessageContaining("not a workspace");
        assertThat(Files.readAllBytes(file())).isEqualTo(text);
    }

    @Test
    void anotherProgramsDatabaseIsRefusedAndLeftAlone() throws Exception {
        sql(file(), "CREATE TABLE letters (text)", "PRAGMA user_version = 1");
        byte[] before = Files.readAllBytes(file());
        assertRefused(() -> Fixtures.open(file()), StoreException.Cause.DAMAGED)
                .hasMessageContaining("another program");
        assertRefused(() -> SqliteStore.openForReading(file(), Fixtures::profile), StoreException.Cause.DAMAGED)
                .hasMessageContaining("another program");
        assertThat(Files.readAllBytes(file())).isEqualTo(before);
    }

    @Test
    void aNewerFormatIsRefused() throws Exception {
        Fixtures.open(file()).close();
        sql(file(), "PRAGMA user_version = 99");
        assertRefused(() -> Fixtures.open(file()), StoreException.Cause.DAMAGED)
                .hasMessageContaining("has format 99")
                .hasMessageContaining("newer version");
    }

    @Test
    void anOlderFormatIsReadOnlyAfterItHasBeenBroughtUp() throws Exception {
        Fixtures.open(file()).close();
        sql(file(), "PRAGMA user_version = 0");
        assertRefused(() -> SqliteStore.openForReading(file(), Fixtures::profile), StoreException.Cause.FAULT)
                .hasMessageContaining("older format 0")
                .hasMessageContaining("open it once for writing");
    }

    @Test
    void aMigrationThatFailsLeavesTheFormerFormat() throws Exception {
        Failures failures = new Failures(file());
        Migration first = Migration.of(List.of("CREATE TABLE a (x INTEGER) STRICT"));
        Migration bad = Migration.of(List.of("CREATE TABLE b (x INTEGER) STRICT", "INSERT INTO nowhere VALUES (1)"));
        Migration good = Migration.of(List.of("CREATE TABLE c (x INTEGER) STRICT"));
        try (Connection connection = Connections.writer(file())) {
            assertThat(Schema.migrate(connection, List.of(first), failures)).isTrue();
            assertThatThrownBy(() -> Schema.migrate(connection, List.of(first, bad), failures))
                    .isInstanceOf(SQLException.class);
            assertThat(Schema.read(connection)).isEqualTo(new Schema.Identity(Schema.APPLICATION_ID, 1, 1));
            assertThat(Schema.migrate(connection, List.of(first, good), failures))
                    .isTrue();
            assertThat(Schema.read(connection)).isEqualTo(new Schema.Identity(Schema.APPLICATION_ID, 2, 2));
            assertThat(Schema.migrate(connection, List.of(first, good), failures))
                    .isFalse();
        }
    }

    @Test
    void aMissingFolderIsRefusedUnlessItIsTheDefaultOne() throws StoreException {
        Path missing = folder.resolve("a").resolve("b").resolve("w.settlemark");
        assertRefused(() -> Fixtures.open(missing), StoreException.Cause.FAULT).hasMessageContaining("does not exist");
        assertThat(missing.getParent()).doesNotExist();
        SqliteStore.open(new WorkspacePlace(missing, true), Fixtures::profile).close();
        assertThat(missing).isRegularFile();
    }

    @Test
    void aFolderThatCannotBeMadeIsSaid() throws Exception {
        Path plain = Files.createFile(folder.resolve("plain"));
        assertRefused(
                        () -> SqliteStore.open(
                                new WorkspacePlace(plain.resolve("deeper").resolve("w.settlemark"), true),
                                Fixtures::profile),
                        StoreException.Cause.FAULT)
                .hasMessageContaining("cannot be made or reached");
    }

    @Test
    void theRootOfADiskIsAFolderToo() {
        Path root = folder.toAbsolutePath().getRoot();
        assertThat(Opening.folder(root)).isEqualTo(root);
        assertThatThrownBy(() -> Fixtures.open(root))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("this is a folder");
    }

    @Test
    void aTreeThatIsInNoTableKeepsSqlitesWords() throws Exception {
        Fixtures.open(file()).close();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file())) {
            long root = Schema.number(connection, "SELECT rootpage FROM sqlite_schema WHERE name = 'note'");
            assertThat(Opening.named(connection, "Tree " + root + " page 9: x"))
                    .isEqualTo("table note: Tree " + root + " page 9: x");
            assertThat(Opening.named(connection, "Tree 9999 page 9: x")).isEqualTo("Tree 9999 page 9: x");
            assertThat(Opening.named(connection, "Page 9: never used")).isEqualTo("Page 9: never used");
        }
    }

    @Test
    void aFolderIsNoWorkspace() {
        assertRefused(() -> Fixtures.open(folder), StoreException.Cause.FAULT).hasMessageContaining("is a folder");
    }

    @Test
    void aWorkspaceThatIsNotThereIsNotMadeByReading() {
        assertRefused(() -> SqliteStore.openForReading(file(), Fixtures::profile), StoreException.Cause.FAULT)
                .hasMessageContaining("none yet");
        assertThat(folder).isEmptyDirectory();
    }

    @Test
    void anEmptyFileBecomesAWorkspaceByWritingOnly() throws Exception {
        Files.createFile(file());
        assertRefused(() -> SqliteStore.openForReading(file(), Fixtures::profile), StoreException.Cause.DAMAGED)
                .hasMessageContaining("is empty");
        Fixtures.open(file()).close();
        SqliteStore.openForReading(file(), Fixtures::profile).close();
    }

    @Test
    void aSecondWriterInTheSameProcessIsRefusedUntilTheFirstHasClosed() throws Exception {
        SqliteStore first = Fixtures.open(file());
        Path link = Files.createSymbolicLink(folder.resolve("link"), file());
        assertRefused(() -> Fixtures.open(file()), StoreException.Cause.FAULT)
                .hasMessageContaining("this process is writing to it")
                .hasMessageContaining("one writer");
        assertRefused(() -> Fixtures.open(link), StoreException.Cause.FAULT).hasMessageContaining("one writer");
        first.begin(Fixtures.log("still"));
        first.close();
        try (SqliteStore second = Fixtures.open(link)) {
            assertThat(second.sessions()).hasSize(1);
        }
    }

    @Test
    void aSecondWriterInAnotherProcessIsRefusedAndNamesTheFirst() throws Exception {
        try (SqliteStore first = Fixtures.open(file())) {
            first.begin(Fixtures.log("first"));
            // A refused attempt of this process must not have given the lock away.
            assertThatThrownBy(() -> Fixtures.open(file())).isInstanceOf(StoreException.class);
            List<String> said = ChildWriter.run(file(), 0);
            assertThat(said)
                    .singleElement()
                    .asString()
                    .startsWith("refused FAULT ")
                    .contains("process " + ProcessHandle.current().pid() + " is writing to it");
        }
    }

    @Test
    void readingIsPossibleBesideTheWriterAndLeavesNothingBehind() throws Exception {
        try (SqliteStore writer = Fixtures.open(file())) {
            long session = writer.begin(Fixtures.log("log"));
            writer.append(session, Fixtures.second(0));
            try (SqliteStore reader = SqliteStore.openForReading(file(), Fixtures::profile)) {
                assertThat(reader.sampleCount(session, 0)).isEqualTo(20);
                writer.append(session, Fixtures.second(1));
                assertThat(reader.sampleCount(session, 0)).isEqualTo(40);
                assertThatThrownBy(() -> reader.begin(Fixtures.log("no")))
                        .isInstanceOf(IllegalStateException.class)
                        .hasMessageContaining("reading only");
            }
        }
        assertThat(Connections.cutOff(file())).isFalse();
        try (SqliteStore reader = SqliteStore.openForReading(file(), Fixtures::profile)) {
            assertThat(reader.sessions()).hasSize(1);
        }
        assertThat(Connections.cutOff(file())).isFalse();
        Fixtures.open(file()).close();
    }

    @Test
    void aNameWithSignsThatMeanSomethingInAnAddressIsStillThatFile() throws Exception {
        Path odd = folder.resolve("a b?cache=shared#1%20+&'\u00e9.settlemark");
        try (SqliteStore store = Fixtures.open(odd)) {
            store.begin(Fixtures.log("log"));
        }
        assertThat(odd).isRegularFile();
        try (SqliteStore reader = SqliteStore.openForReading(odd, Fixtures::profile)) {
            assertThat(reader.sessions()).hasSize(1);
        }
        try (var files = Files.list(folder)) {
            assertThat(files.map(p -> p.getFileName().toString()))
                    .allMatch(n -> n.startsWith("a b?cache=shared#1%20+&'\u00e9.settlemark"));
        }
    }

    @Test
    void theDurableSettingsAreInForce() throws Exception {
        try (SqliteStore store = Fixtures.open(file())) {
            assertThat(store.file()).isEqualTo(file().toRealPath());
        }
        try (Connection connection = Connections.writer(file())) {
            Connections.useLog(connection);
            assertThat(text(connection, "PRAGMA journal_mode")).isEqualTo("wal");
            assertThat(text(connection, "PRAGMA synchronous")).isEqualTo("2");
            assertThat(text(connection, "PRAGMA foreign_keys")).isEqualTo("1");
            assertThat(text(connection, "PRAGMA busy_timeout")).isEqualTo("5000");
            assertThat(text(connection, "PRAGMA application_id")).isEqualTo(Integer.toString(Schema.APPLICATION_ID));
            assertThat(text(connection, "PRAGMA user_version")).isEqualTo("5");
            assertThat(text(
                            connection,
                            "SELECT count(*) FROM pragma_table_list WHERE schema = 'main' AND name NOT LIKE 'sqlite%'"
                                    + " AND NOT strict"))
                    .isEqualTo("0");
        }
    }

    private static String text(Connection connection, String query) throws SQLException {
        try (Statement statement = connection.createStatement();
                var row = statement.executeQuery(query)) {
            return row.getString(1);
        }
    }

    @Test
    void aDamagedTableIsNamedAfterAnUncleanEnd() throws Exception {
        ChildWriter.killAfter(file(), 300);
        sql(file(), "PRAGMA wal_checkpoint(TRUNCATE)");
        long page;
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file())) {
            page = Schema.number(connection, "SELECT rootpage FROM sqlite_schema WHERE name = 'event_block'");
        }
        try (RandomAccessFile raw = new RandomAccessFile(file().toFile(), "rw")) {
            raw.seek((page - 1) * 4096 + 2);
            raw.write(new byte[] {0x7f, 0x7f, 0x7f, 0x7f});
        }
        // As a killed process leaves it: a log with something in it.
        Files.write(Connections.log(file()), new byte[32]);
        assertRefused(() -> Fixtures.open(file()), StoreException.Cause.DAMAGED)
                .hasMessageContaining("was not closed in order")
                .hasMessageContaining("table event_block")
                .hasMessageContaining("--workspace");
        // What is whole can still be read.
        Files.deleteIfExists(Connections.log(file()));
        try (SqliteStore reader = SqliteStore.openForReading(file(), Fixtures::profile)) {
            assertThat(reader.sessions()).hasSize(1);
            assertThat(reader.samples(1, 0, 0, 0, Long.MAX_VALUE).size()).isGreaterThanOrEqualTo(400);
            assertThatThrownBy(() -> reader.events(1, e -> {}))
                    .isInstanceOfSatisfying(
                            StoreException.class, e -> assertThat(e.kind()).isEqualTo(StoreException.Cause.DAMAGED));
        }
    }
}
