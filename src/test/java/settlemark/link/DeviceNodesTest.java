package settlemark.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.session.LinkException;

/** Devices that every system has stand in for serial ones: only the system can make a node. */
final class DeviceNodesTest {
    private static final Path ONE = Path.of("/dev/null");
    private static final Path OTHER = Path.of("/dev/zero");

    @TempDir
    private Path dev;

    private DeviceNodes nodes;
    private Path byId;

    @BeforeEach
    void tree() throws IOException {
        nodes = new DeviceNodes(dev);
        byId = Files.createDirectories(dev.resolve("serial/by-id"));
        Files.createDirectories(dev.resolve("serial/by-path"));
    }

    @Test
    void aDeviceIsFoundAgainUnderItsOwnNameWhenTheNumbersSwap() throws Exception {
        Path gauge = Files.createSymbolicLink(byId.resolve("usb-gauge-123"), ONE);
        String lasting = nodes.lasting(ONE.toString(), ONE);
        assertThat(lasting).isEqualTo(gauge.toString());
        Files.delete(gauge);
        Files.createSymbolicLink(gauge, OTHER);
        assertThat(nodes.resolve(lasting)).isEqualTo(OTHER);
    }

    @Test
    void theSocketIsTheNameOfADeviceWithoutASerialNumber() throws IOException {
        Path socket = Files.createSymbolicLink(dev.resolve("serial/by-path/pci-usb-1.2"), OTHER);
        assertThat(nodes.lasting(OTHER.toString(), OTHER)).isEqualTo(socket.toString());
    }

    @Test
    void aLinkThatThePersonGaveIsTheNameThatIsLookedFor() throws Exception {
        Files.createSymbolicLink(byId.resolve("usb-gauge-123"), ONE);
        Path given = Files.createSymbolicLink(dev.resolve("my-gauge"), ONE);
        assertThat(nodes.lasting(given.toString(), nodes.resolve(given.toString())))
                .isEqualTo(given.toString());
    }

    @Test
    void withoutALastingNameThePathItselfIsLookedFor() {
        assertThat(nodes.lasting(ONE.toString(), ONE)).isEqualTo(ONE.toString());
    }

    @Test
    void aMissingPortIsAnsweredWithThoseInReach() throws IOException {
        Path gauge = Files.createSymbolicLink(byId.resolve("usb-gauge-123"), ONE);
        assertThatThrownBy(() -> nodes.resolve(dev + "/ttyUSB5"))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("no device " + dev + "/ttyUSB5")
                .hasMessageContaining("In reach now: " + gauge);
    }

    @Test
    void whereNothingIsInReachThatIsSaid() {
        assertThatThrownBy(() -> nodes.resolve("/dev/ttyUSB55")).hasMessageContaining("No USB serial port is in reach");
    }

    @Test
    void aNameWithoutItsFolderIsAnsweredWithTheWholePath() throws IOException {
        Files.createSymbolicLink(dev.resolve("ttyUSB0"), ONE);
        assertThatThrownBy(() -> nodes.resolve("ttyUSB0")).hasMessageContaining("the whole path, " + dev + "/ttyUSB0");
    }
}
