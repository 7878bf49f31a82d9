package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.session.StoreHealth;

final class HealthTest {
    private static final Path FILE = Path.of("/data/w.settlemark");

    @TempDir
    Path folder;

    @Test
    void aRoomyDiskAndAShortLogWarnOfNothing() {
        assertThat(Health.of(FILE, Health.LEAST_FREE_BYTES, Health.MOST_LOG_BYTES)
                        .warnings())
                .isEmpty();
        assertThat(Health.of(FILE, -1, 0).warnings())
                .as("a system that does not say")
                .isEmpty();
    }

    @Test
    void aDiskThatIsNearlyFullIsSaidWithWhatIsLeft() {
        assertThat(Health.of(FILE, 100L << 20, 0).warnings())
                .containsExactly("the disk of workspace /data/w.settlemark is nearly full: 100 MB are left; free space"
                        + " before it stops the session");
    }

    @Test
    void aLogThatDoesNotShrinkIsSaidWithItsSize() {
        assertThat(Health.of(FILE, 1L << 40, 65L << 20).warnings())
                .singleElement()
                .asString()
                .contains("has grown to 65 MB")
                .contains("open for reading");
    }

    @Test
    void aNearlyFullDiskIsSeenAtOnceThroughTheStore() throws Exception {
        try (TinyDisk disk = TinyDisk.mount(folder, "size=300m")) {
            try (SqliteStore store = Fixtures.open(disk.file("w.settlemark"))) {
                StoreHealth before = store.health();
                assertThat(before.warnings()).isEmpty();
                assertThat(before.freeBytes()).isBetween(290L << 20, 300L << 20);
                assertThat(before.logBytes()).isPositive();
                try (var ballast = Files.newOutputStream(disk.file("ballast"))) {
                    for (int i = 0; i < 60; i++) {
                        ballast.write(new byte[1 << 20]);
                    }
                }
                assertThat(store.health().warnings()).singleElement().asString().contains("nearly full: 23");
            }
        }
    }
}
