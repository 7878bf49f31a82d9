package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.session.CheckReport;
import settlemark.session.Rereading;
import settlemark.session.StoreException;
import settlemark.session.StoreTools;

/** Compacting gives room back and changes nothing else; where it cannot be done the file is as it was. */
final class CompactionTest {
    @TempDir
    Path folder;

    private final WorkspaceTools tools = new WorkspaceTools(Fixtures::profile);

    private Path file() {
        return folder.resolve("w.settlemark");
    }

    /** With a great deal of unused room in it. */
    @BeforeEach
    void fill() throws Exception {
        Workspace.fill(file());
        try (SqliteStore store = Fixtures.open(file())) {
            Rereading again = store.rereadings().begin(1, Fixtures.probes(), Workspace.NOW, "test");
            for (int n = 0; n < 2000; n += 50) {
                store.rereadings().append(again, Workspace.minute(n, 50).results());
            }
            store.rereadings().discard(again);
        }
    }

    @Test
    void roomIsGivenBackAndEverythingIsAsItWas() throws Exception {
        CheckReport before = tools.check(file());
        Files.setPosixFilePermissions(file(), PosixFilePermissions.fromString("rw-r-----"));
        StoreTools.Sizes sizes = tools.compact(file());
        assertThat(sizes.afterBytes()).isLessThan(sizes.beforeBytes() * 95 / 100);
        assertThat(Files.size(file())).isEqualTo(sizes.afterBytes());
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file())))
                .isEqualTo("rw-r-----");
        CheckReport after = tools.check(file());
        assertThat(after.damage()).isEmpty();
        assertThat(after.contents()).isEqualTo(before.contents());
        try (SqliteStore store = Fixtures.open(file())) {
            for (int n = 500; n < 600; n += 5) {
                store.append(2, Workspace.minute(n, 5));
            }
        }
        assertThat(tools.check(file()).damage()).isEmpty();
        assertThat(tools.compact(file()).beforeBytes()).isPositive();
        onlyTheFileIsThere();
    }

    private void onlyTheFileIsThere() throws Exception {
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left.map(p -> p.getFileName().toString()))
                    .noneMatch(n -> n.endsWith(".part"))
                    .contains("w.settlemark");
        }
    }

    @Test
    void aLinkStaysALinkAndItsTargetIsCompacted() throws Exception {
        Path link = Files.createSymbolicLink(folder.resolve("link"), file());
        tools.compact(link);
        assertThat(link).isSymbolicLink();
        assertThat(tools.check(link).damage()).isEmpty();
    }

    @Test
    void whileAWriterIsInNothingIsTouched() throws Exception {
        try (SqliteStore store = Fixtures.open(file())) {
            refused(StoreException.Cause.FAULT, "is writing to it");
            store.append(2, Workspace.minute(500, 5));
        }
        assertThat(tools.check(file()).damage()).isEmpty();
    }

    @Test
    void whileAReaderIsInNothingIsTouched() throws Exception {
        try (Connection reader = Connections.reader(file())) {
            Connections.run(reader, "BEGIN");
            assertThat(Schema.number(reader, "SELECT count(*) FROM session")).isEqualTo(3);
            refused(StoreException.Cause.FAULT, "another program reads it");
            assertThat(Schema.number(reader, "SELECT count(*) FROM profile")).isEqualTo(2);
        }
        assertThat(tools.check(file()).damage()).isEmpty();
        onlyTheFileIsThere();
    }

    private void refused(StoreException.Cause kind, String words) throws Exception {
        long size = Files.size(file());
        assertThatThrownBy(() -> tools.compact(file()))
                .isInstanceOfSatisfying(
                        StoreException.class, e -> assertThat(e.kind()).isEqualTo(kind))
                .hasMessageContaining(words);
        assertThat(Files.size(file())).isEqualTo(size);
    }

    @Test
    void aDamagedWorkspaceIsLeftAsItIs() throws Exception {
        Workspace.damageBlock(file(), "block", "sample_block WHERE session = 1 AND probe = 1 AND number = 2");
        refused(StoreException.Cause.DAMAGED, "session 1, probe air");
        onlyTheFileIsThere();
        int leaf = Workspace.pages(file(), "sample_block", "leaf").get(3);
        Workspace.wipe(file(), leaf, 0, Workspace.PAGE, 0x5a);
        refused(StoreException.Cause.DAMAGED, "is damaged");
        onlyTheFileIsThere();
    }

    @Test
    void withoutRoomForTheNewFormTheOldOneStays() throws Exception {
        Path small = Files.createDirectory(folder.resolve("small"));
        try (TinyDisk disk = TinyDisk.mount(small, "size=" + (Files.size(file()) + 200_000))) {
            Files.copy(file(), disk.file("w"));
            assertThatThrownBy(() -> tools.compact(disk.file("w")))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("disk is full");
            assertThat(tools.check(disk.file("w")).damage()).isEmpty();
        }
    }
}
