package settlemark.link;

import com.fazecast.jSerialComm.SerialPort;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.atomic.AtomicBoolean;
import settlemark.profile.Profile;
import settlemark.profile.Sighting;
import settlemark.session.LinkException;
import settlemark.session.LinkListener;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeHost;
import settlemark.session.ProbeLink;
import settlemark.session.Ticker;

/**
 * Gauges on serial ports, real and pseudo ones. Addresses are {@code serial:PATH}; a port that goes is opened again when
 * its device is back. Safe to use from several threads.
 */
public final class SerialHost implements ProbeHost {
    private static final String SCHEME = "serial";

    private final ThreadFactory threads;
    private final DeviceNodes nodes;
    private final TtyOpener opener;
    private final Set<SerialLink> links = ConcurrentHashMap.newKeySet();
    private final AtomicBoolean hooked = new AtomicBoolean();

    /** @param threads makes the threads that read, write and close; they are named here */
    public SerialHost(ThreadFactory threads) {
        this(threads, new DeviceNodes(Path.of("/dev")), new NativeTtys());
    }

    SerialHost(ThreadFactory threads, DeviceNodes nodes, TtyOpener opener) {
        this.threads = threads;
        this.nodes = nodes;
        this.opener = opener;
    }

    @Override
    public String scheme() {
        return SCHEME;
    }

    /** USB ports first, under the name that stays with the device. */
    @Override
    public List<FoundProbe> found() throws LinkException {
        NativeLibrary.load();
        List<SerialPort> ports = new ArrayList<>(List.of(SerialPort.getCommPorts()));
        ports.sort(Comparator.comparing((SerialPort p) -> p.getVendorID() < 0)
                .thenComparing(SerialPort::getSystemPortPath));
        return ports.stream().map(this::found).toList();
    }

    private FoundProbe found(SerialPort port) {
        String path = port.getSystemPortPath();
        String lasting = nodes.stableLink(Path.of(path)).map(Path::toString).orElse(path);
        return new FoundProbe(
                new ProbeAddress(SCHEME, lasting),
                port.getPortDescription() + " (" + port.getSystemPortName() + ")",
                Optional.of(new Sighting.Port(
                        port.getPortDescription(), usb(port.getVendorID()), usb(port.getProductID()))));
    }

    /** The library says -1 where a port is none of USB. */
    private static Optional<Integer> usb(int number) {
        return number < 0 ? Optional.empty() : Optional.of(number);
    }

    @Override
    public ProbeLink open(ProbeAddress address, Profile profile, Ticker ticker, LinkListener listener)
            throws LinkException {
        if (!address.scheme().equals(SCHEME)) {
            throw new LinkException("a serial address begins with \"serial:\", got \"" + address + "\"");
        }
        String path = address.path();
        String identity = nodes.identity(path, nodes.resolve(path));
        SerialPlace place = new SerialPlace(path, identity, LineSettings.of(profile), nodes, opener, threads);
        links.removeIf(SerialLink::isClosed);
        SerialLink link = SerialLink.start(place, ticker, listener);
        links.add(link);
        if (hooked.compareAndSet(false, true)) {
            opener.beforeShutdown(threads.newThread(this::closeAll));
        }
        return link;
    }

    /** The library closes its ports when the program is told to end; that is no unplugged gauge, so links end first. */
    private void closeAll() {
        links.forEach(SerialLink::close);
    }
}
