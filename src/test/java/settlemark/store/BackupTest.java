package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.session.CheckReport;
import settlemark.session.StoreException;

/** A backup is whole whenever it is made, and is never half there. */
final class BackupTest {
    @TempDir
    Path folder;

    private final WorkspaceTools tools = new WorkspaceTools(Fixtures::profile);

    private Path file() {
        return folder.resolve("w.settlemark");
    }

    private Path copy() {
        return folder.resolve("copy.settlemark");
    }

    private void noPartIsLeft(Path in) throws Exception {
        try (Stream<Path> left = Files.list(in)) {
            assertThat(left.map(p -> p.getFileName().toString())).noneMatch(n -> n.endsWith(".part"));
        }
    }

    @Test
    void whatIsInTheLogAloneIsInTheBackupThoughNotInACopyOfTheFile() throws Exception {
        try (SqliteStore store = Fixtures.open(file());
                Connection reader = Workspace.raw(file())) {
            store.begin(Fixtures.log("first"));
            Connections.run(reader, "BEGIN");
            Schema.number(reader, "SELECT count(*) FROM session");
            for (int n = 0; n < 20; n += 5) {
                store.append(1, Workspace.minute(n, 5));
            }
            CheckReport report = tools.backup(file(), copy());
            assertThat(report.file()).isEqualTo(copy().toRealPath());
            assertThat(report.contents().samples()).isEqualTo(800);
            Path naive = folder.resolve("naive.settlemark");
            Files.copy(file(), naive);
            assertThat(tools.check(naive).contents().samples())
                    .as("a copy of the file without its log lacks what is in the log")
                    .isZero();
        }
        CheckReport check = tools.check(copy());
        assertThat(check.damage()).isEmpty();
        assertThat(check.contents().samples()).isEqualTo(800);
        noPartIsLeft(folder);
    }

    @Test
    void backupsWhileAnotherProcessWritesAreEachAWholeBeginning() throws Exception {
        Process child = ChildWriter.start(List.of(), file(), "child", Long.MAX_VALUE);
        try (BufferedReader output = ChildWriter.output(child)) {
            ChildWriter.begin(child);
            long last = 0;
            for (int i = 0; i < 5; i++) {
                long acknowledged = acknowledged(output, last + 20);
                Path copy = folder.resolve("copy-" + i);
                CheckReport report = tools.backup(file(), copy);
                assertThat(report.damage()).isEmpty();
                assertThat(report.contents().samples()).isGreaterThanOrEqualTo(40 * acknowledged);
                assertThat(report.contents().samples() % 40).isZero();
                last = acknowledged;
            }
        } finally {
            child.destroyForcibly();
            assertThat(child.waitFor(60, TimeUnit.SECONDS)).isTrue();
        }
    }

    private static long acknowledged(BufferedReader output, long least) throws Exception {
        for (String line = output.readLine(); line != null; line = output.readLine()) {
            if (line.startsWith("stored ") && Long.parseLong(line.substring(7)) >= least) {
                return Long.parseLong(line.substring(7));
            }
        }
        throw new AssertionError("the writer ended");
    }

    @Test
    void nothingIsOverwrittenNotEvenByALink() throws Exception {
        Fixtures.open(file()).close();
        Files.writeString(copy(), "mine", StandardCharsets.UTF_8);
        refused(copy(), "is there already");
        assertThat(copy()).hasContent("mine");
        Path dangling = Files.createSymbolicLink(folder.resolve("dangling"), folder.resolve("nowhere"));
        refused(dangling, "is there already");
        assertThat(folder.resolve("nowhere")).doesNotExist();
        refused(file(), "is there already");
        refused(folder.resolve("none").resolve("copy"), "does not exist");
        Files.writeString(folder.resolve("other-wal"), "log", StandardCharsets.UTF_8);
        refused(folder.resolve("other"), "belongs to a former file");
    }

    private void refused(Path to, String words) {
        assertThatThrownBy(() -> tools.backup(file(), to))
                .isInstanceOfSatisfying(
                        StoreException.class, e -> assertThat(e.kind()).isEqualTo(StoreException.Cause.FAULT))
                .hasMessageContaining(words);
    }

    @Test
    void aDamagedWorkspaceIsNotPassedOnAsABackup() throws Exception {
        Workspace.fill(file());
        Workspace.damageBlock(file(), "block", "sample_block WHERE session = 1 AND probe = 1 AND number = 2");
        assertThatThrownBy(() -> tools.backup(file(), copy()))
                .isInstanceOfSatisfying(
                        StoreException.class, e -> assertThat(e.kind()).isEqualTo(StoreException.Cause.DAMAGED))
                .hasMessageContaining("session 1, probe air")
                .hasMessageContaining("store repair");
        assertThat(copy()).doesNotExist();
        noPartIsLeft(folder);
    }

    @Test
    void aDiskThatIsFullIsSaidAndTheWorkspaceIsAsItWas() throws Exception {
        Workspace.fill(file());
        Path small = Files.createDirectory(folder.resolve("small"));
        try (TinyDisk disk = TinyDisk.mount(small, "size=300k")) {
            assertThatThrownBy(() -> tools.backup(file(), disk.file("copy")))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("disk is full")
                    .hasMessageContaining(small.toString());
            assertThat(disk.file("copy")).doesNotExist();
            noPartIsLeft(small);
            assertThatThrownBy(() -> tools.repair(file(), disk.file("copy"), Workspace.NOW))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("a repair needs");
            noPartIsLeft(small);
        }
        assertThat(tools.check(file()).damage()).isEmpty();
    }

    @Test
    void aWorkspaceThatCannotBeWrittenCanBeCheckedAndBackedUpAndRepairedElsewhere() throws Exception {
        Path there = Files.createDirectory(folder.resolve("there"));
        try (TinyDisk disk = TinyDisk.mount(there, "size=16m")) {
            Path file = disk.file("w.settlemark");
            Workspace.fill(file);
            disk.remount("ro");
            assertThat(tools.check(file).damage()).isEmpty();
            assertThat(tools.backup(file, copy()).damage()).isEmpty();
            assertThat(tools.repair(file, folder.resolve("repaired"), Workspace.NOW)
                            .lost())
                    .isEmpty();
            assertThatThrownBy(() -> tools.compact(file))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("read-only");
            assertThatThrownBy(() -> tools.backup(copy(), disk.file("copy")))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("no file can be made");
        }
    }
}
