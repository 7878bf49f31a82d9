package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;
import settlemark.session.SessionEvent;
import settlemark.session.StoreException;

/** Disks that are full, cannot be written, or forbid execution. */
@Isolated
final class DiskTest {
    @TempDir
    Path folder;

    @Test
    void aFullDiskLosesNothingAndTheSameBatchGoesInWhenThereIsSpace() throws Exception {
        try (TinyDisk disk = TinyDisk.mount(folder, "size=4m")) {
            Path file = disk.file("w.settlemark");
            Files.write(disk.file("ballast"), new byte[2 << 20]);
            long stored = 0;
            try (SqliteStore store = Fixtures.open(file)) {
                long session = store.begin(Fixtures.log("log"));
                StoreException full = null;
                while (full == null) {
                    long n = stored;
                    full = catchThrowableOfType(StoreException.class, () -> store.append(session, Fixtures.second(n)));
                    stored += full == null ? 1 : 0;
                }
                System.out.println(full.getMessage());
                assertThat(full.kind()).isEqualTo(StoreException.Cause.FAULT);
                assertThat(full)
                        .hasMessageContaining("workspace " + file)
                        .hasMessageContaining("the disk is full")
                        .hasMessageContaining("nothing stored is lost")
                        .hasMessageContaining("free space");
                assertThat(stored).isGreaterThan(20);
                assertStored(store, session, stored);
                long next = stored;
                assertThatThrownBy(() -> store.append(session, Fixtures.second(next)))
                        .hasMessageContaining("the disk is full");
                Files.delete(disk.file("ballast"));
                for (int i = 0; i < 50; i++) {
                    store.append(session, Fixtures.second(stored));
                    stored++;
                }
                assertStored(store, session, stored);
                store.end(session, stored * Fixtures.SECOND);
            }
            try (SqliteStore store = Fixtures.open(file)) {
                assertStored(store, 1, stored);
            }
        }
    }

    @Test
    void aDiskThatIsFullFromTheStartIsNamed() throws Exception {
        try (TinyDisk disk = TinyDisk.mount(folder, "size=64k")) {
            Files.write(disk.file("ballast"), new byte[64 << 10]);
            assertThatThrownBy(() -> Fixtures.open(disk.file("w.settlemark")))
                    .isInstanceOfSatisfying(
                            StoreException.class, e -> assertThat(e.kind()).isEqualTo(StoreException.Cause.FAULT))
                    .hasMessageContaining("disk is full");
        }
    }

    private static void assertStored(SqliteStore store, long session, long batches) throws StoreException {
        List<SessionEvent> events = new ArrayList<>();
        store.events(session, events::add);
        List<SessionEvent> expected = new ArrayList<>();
        for (long n = 0; n < batches; n++) {
            expected.addAll(Fixtures.second(n).events());
        }
        assertThat(events).isEqualTo(expected);
        assertThat(store.sampleCount(session, 1)).isEqualTo(20 * batches);
        assertThat(store.samples(session, 1, 1, 0, Long.MAX_VALUE).size()).isEqualTo((int) (10 * batches));
    }

    @Test
    void aDiskThatCannotBeWrittenIsReadButNotWritten() throws Exception {
        try (TinyDisk disk = TinyDisk.mount(folder, "size=4m")) {
            Path file = disk.file("w.settlemark");
            try (SqliteStore store = Fixtures.open(file)) {
                store.append(store.begin(Fixtures.log("log")), Fixtures.second(0));
            }
            disk.remount("ro");
            assertThatThrownBy(() -> Fixtures.open(file))
                    .isInstanceOfSatisfying(
                            StoreException.class, e -> assertThat(e.kind()).isEqualTo(StoreException.Cause.FAULT))
                    .hasMessageContaining("read-only")
                    .hasMessageContaining("--workspace");
            assertThatThrownBy(() -> Fixtures.open(disk.file("new.settlemark")))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("read-only");
            try (SqliteStore store = SqliteStore.openForReading(file, Fixtures::profile)) {
                assertStored(store, 1, 1);
            }
        }
    }

    @Test
    void aTempFolderThatForbidsExecutionIsNamedWithTheRemedy() throws Exception {
        Path temp = Files.createDirectory(folder.resolve("temp"));
        try (TinyDisk disk = TinyDisk.mount(temp, "size=8m,noexec")) {
            Path file = folder.resolve("w.settlemark");
            assertThat(ChildWriter.run(file, 1, "-Djava.io.tmpdir=" + temp))
                    .singleElement()
                    .asString()
                    .startsWith("refused FAULT ")
                    .contains("temp folder forbids execution: " + temp)
                    .contains("mounted noexec")
                    .contains("-Dorg.sqlite.tmpdir=");
            Path good = Files.createDirectory(folder.resolve("good"));
            assertThat(ChildWriter.run(file, 1, "-Djava.io.tmpdir=" + temp, "-Dorg.sqlite.tmpdir=" + good))
                    .containsExactly("session 1", "stored 1");
            assertThat(disk.file("x").getParent()).isEqualTo(temp);
        }
    }
}
