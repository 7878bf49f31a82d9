package settlemark.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.session.LinkException;

/** Ports are enumerated once for each change of the device folder. */
final class PortListTest {
    @TempDir
    private Path dev;

    private final AtomicInteger enumerations = new AtomicInteger();

    @Test
    void nothingIsEnumeratedAgainUntilANodeComesGoesOrIsReplaced() throws IOException {
        PortList list = new PortList(dev, () -> {
            int n = enumerations.incrementAndGet();
            return List.of(new PortList.Port("/dev/ttyUSB" + n, "gauge", Optional.of(0x1209), Optional.of(1)));
        });
        for (int i = 0; i < 100; i++) {
            assertThat(list.ports()).hasSize(1);
        }
        assertThat(enumerations).hasValue(1);
        Path node = Files.createFile(dev.resolve("ttyUSB0"));
        Files.createFile(dev.resolve("sda1"));
        list.ports();
        assertThat(list.ports().get(0).path()).isEqualTo("/dev/ttyUSB2");
        assertThat(enumerations).hasValue(2);
        // gone and back under the same name between two looks
        Path kept = Files.move(node, dev.resolve("old"));
        Files.createFile(dev.resolve("ttyUSB0"));
        Files.delete(kept);
        list.ports();
        list.ports();
        assertThat(enumerations).hasValue(3);
        Files.delete(dev.resolve("ttyUSB0"));
        list.ports();
        list.ports();
        assertThat(enumerations).hasValue(4);
    }

    @Test
    void anAddressMayNameAUnit() throws LinkException {
        assertThat(PortAddress.of("/dev/ttyUSB0")).isEqualTo(new PortAddress("/dev/ttyUSB0", 0));
        assertThat(PortAddress.of("/dev/ttyUSB0@3")).isEqualTo(new PortAddress("/dev/ttyUSB0", 3));
        assertThat(PortAddress.of("/dev/a@b")).isEqualTo(new PortAddress("/dev/a@b", 0));
        for (String unit : List.of("0", "248", "999999999")) {
            assertThatThrownBy(() -> PortAddress.of("/dev/ttyUSB0@" + unit)).hasMessageContaining("1 to 247");
        }
    }
}
