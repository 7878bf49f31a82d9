package settlemark.link;

import static org.assertj.core.api.Assertions.assertThat;
import static settlemark.link.Fixtures.PROFILE;
import static settlemark.link.Fixtures.THREADS;
import static settlemark.link.Fixtures.serial;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.profile.SerialLine;
import settlemark.session.LinkChange;
import settlemark.session.ProbeLink;

/** Against a device tree in a folder; the nodes are devices that every Linux has. */
@SuppressWarnings("try") // a link is there to be listened to
final class IdentitiesTest {
    private static final Path ONE = Path.of("/dev/null");
    private static final Path OTHER = Path.of("/dev/zero");

    @TempDir
    private Path folder;

    private Path ttys;
    private DeviceNodes nodes;
    private Identities identities;

    @BeforeEach
    void start() throws IOException {
        ttys = Files.createDirectories(folder.resolve("class/tty"));
        nodes = new DeviceNodes(Path.of("/dev"));
        identities = new Identities(ttys, nodes);
    }

    /** As Linux lays it out: the tty's device is below the interface, which is below the USB device. */
    private void plugIn(String tty, String socket, int port, String serial) throws IOException {
        Path usb = Files.createDirectories(folder.resolve("devices/" + socket));
        Files.writeString(usb.resolve("idVendor"), "1209\n");
        Files.writeString(usb.resolve("idProduct"), "0001\n");
        if (!serial.isEmpty()) {
            Files.writeString(usb.resolve("serial"), serial + "\n");
        }
        Path of = Files.createDirectories(usb.resolve(socket + ":1." + port));
        Files.writeString(of.resolve("bInterfaceNumber"), "0" + port + "\n");
        Path device = Files.createDirectories(of.resolve(tty));
        Files.createSymbolicLink(Files.createDirectories(ttys.resolve(tty)).resolve("device"), device);
    }

    private void unplug(String tty) throws IOException {
        Files.deleteIfExists(ttys.resolve(tty).resolve("device"));
        Files.deleteIfExists(ttys.resolve(tty));
    }

    @Test
    void aDeviceGoesByItsUsbNumbersAndItsFurtherPortsByTheirInterface() throws IOException {
        plugIn("null", "1-1", 0, "A17");
        plugIn("zero", "1-1b", 1, "B4");
        assertThat(identities.of(ONE)).isEqualTo("usb:1209:0001:A17");
        assertThat(identities.of(OTHER)).isEqualTo("usb:1209:0001:B4:01");
        assertThat(identities.of(Path.of("/dev/ttyS0"))).isEmpty();
        assertThat(identities.nodeOf("usb:1209:0001:B4:01")).contains(OTHER);
        assertThat(identities.nodeOf("usb:1209:0001:C1")).isEmpty();
    }

    @Test
    void withoutASerialNumberOrWithOneThatAnotherHasTooItGoesByItsSocket() throws IOException {
        Path dev = Files.createDirectories(folder.resolve("dev"));
        Path link = Files.createDirectories(dev.resolve("serial/by-path")).resolve("pci-usb-0:2:1.0");
        Files.createSymbolicLink(link, ONE);
        Identities here = new Identities(ttys, new DeviceNodes(dev));
        plugIn("null", "1-1", 0, "");
        assertThat(here.of(ONE)).isEqualTo("path:pci-usb-0:2:1.0");
        unplug("null");
        plugIn("null", "1-2", 0, "0001");
        plugIn("zero", "1-3", 0, "0001");
        assertThat(here.of(ONE)).isEqualTo("path:pci-usb-0:2:1.0");
        assertThat(here.of(OTHER)).isEmpty();
        assertThat(here.nodeOf("usb:1209:0001:0001")).isEmpty();
    }

    /** Opens anything, remembers what, and can be made to fail. */
    private static final class Opener implements TtyOpener {
        private final List<Path> opened = new CopyOnWriteArrayList<>();
        private volatile boolean gone;

        @Override
        public Tty open(Path node, SerialLine line) {
            opened.add(node);
            return new Tty() {
                @Override
                public int read(byte[] buffer) {
                    return gone ? -1 : 0;
                }

                @Override
                public int write(byte[] bytes, int offset, int length) {
                    return length;
                }

                @Override
                public int awaitingWrite() {
                    return 0;
                }

                @Override
                public void release() {}

                @Override
                public void close() {}
            };
        }
    }

    @Test
    void twoDevicesThatSwapTheirNamesWhileTheyAreAwayKeepTheirGauges() throws Exception {
        plugIn("null", "1-1", 0, "A17");
        plugIn("zero", "1-2", 0, "B4");
        Opener opener = new Opener();
        SerialHost host = new SerialHost(THREADS, nodes, ttys, opener);
        Heard heard = new Heard();
        assertThat(host.identity(serial(ONE))).isEqualTo("usb:1209:0001:A17");
        try (ProbeLink link = host.open(serial(ONE), PROFILE, Fixtures.ticker(), heard)) {
            assertThat(link.identity()).isEqualTo("usb:1209:0001:A17");
            unplug("null");
            unplug("zero");
            opener.gone = true;
            Await.until("lost", 2000, () -> heard.has(LinkChange.LOST));
            plugIn("null", "1-2", 0, "B4");
            plugIn("zero", "1-1", 0, "A17");
            opener.gone = false;
            Await.until("back", 4000, () -> heard.has(LinkChange.BACK));
            assertThat(heard.lastWords()).endsWith("is back as /dev/zero");
        }
        assertThat(opener.opened).containsExactly(ONE, OTHER);
        // A log that remembers the identity sees that another device is behind the name now.
        assertThat(host.identity(serial(ONE))).isEqualTo("usb:1209:0001:B4");
    }
}
