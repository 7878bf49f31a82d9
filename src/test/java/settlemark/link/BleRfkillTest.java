package settlemark.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The kernel's switches, as files of a folder. */
final class BleRfkillTest {
    @Test
    void anAdapterIsBlockedByEitherOfItsOwnSwitches(@TempDir Path folder) throws IOException {
        lay(folder, "rfkill0", "wlan", "phy0", "1", "0");
        lay(folder, "rfkill1", "bluetooth", "hci0", "0", "0");
        lay(folder, "rfkill2", "bluetooth", "hci1", "1", "0");
        lay(folder, "rfkill3", "bluetooth", "hci2", "0", "1");
        assertThat(BleRfkill.isBlocked(folder, "hci0")).isFalse();
        assertThat(BleRfkill.isBlocked(folder, "hci1")).isTrue();
        assertThat(BleRfkill.isBlocked(folder, "hci2")).isTrue();
        assertThat(BleRfkill.isBlocked(folder, "phy0")).isFalse();
        assertThat(BleRfkill.isBlocked(folder.resolve("none"), "hci1")).isFalse();
    }

    private static void lay(Path folder, String name, String type, String device, String soft, String hard)
            throws IOException {
        Path one = Files.createDirectory(folder.resolve(name));
        Files.writeString(one.resolve("type"), type + "\n");
        Files.writeString(one.resolve("name"), device + "\n");
        Files.writeString(one.resolve("soft"), soft + "\n");
        Files.writeString(one.resolve("hard"), hard + "\n");
    }
}
