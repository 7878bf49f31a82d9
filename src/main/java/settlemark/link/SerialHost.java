package settlemark.link;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.atomic.AtomicBoolean;
import settlemark.profile.Link;
import settlemark.profile.Profile;
import settlemark.profile.SerialLine;
import settlemark.profile.Sighting;
import settlemark.session.LinkException;
import settlemark.session.LinkListener;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeHost;
import settlemark.session.ProbeLink;
import settlemark.session.Ticker;

/**
 * Gauges on serial ports, real and pseudo ones. Addresses are {@code serial:PATH}, or {@code serial:PATH@UNIT} for one of
 * several on a Modbus line, which share the port. A port that goes is opened again when its device is back, under
 * whatever name. Safe to use from several threads.
 */
public final class SerialHost implements ProbeHost {
    private static final String SCHEME = "serial";

    private final ThreadFactory threads;
    private final DeviceNodes nodes;
    private final Identities identities;
    private final PortList ports;
    private final TtyOpener opener;
    private final List<Bus> buses = new CopyOnWriteArrayList<>();
    private final AtomicBoolean hooked = new AtomicBoolean();

    /** @param threads makes the threads that read, write and close; they are named here */
    public SerialHost(ThreadFactory threads) {
        this(threads, new DeviceNodes(Path.of("/dev")), Path.of("/sys/class/tty"), new NativeTtys());
    }

    /** @param ttys the folder with an entry for each tty */
    SerialHost(ThreadFactory threads, DeviceNodes nodes, Path ttys, TtyOpener opener) {
        this.threads = threads;
        this.nodes = nodes;
        this.identities = new Identities(ttys, nodes);
        this.ports = new PortList(nodes.folder(), PortList::ofLibrary);
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
        return ports.ports().stream().map(this::found).toList();
    }

    private FoundProbe found(PortList.Port port) {
        Path node = Path.of(port.path());
        String lasting = nodes.stableLink(node).map(Path::toString).orElse(port.path());
        return new FoundProbe(
                new ProbeAddress(SCHEME, lasting),
                description(port.description(), String.valueOf(node.getFileName())),
                Optional.of(new Sighting.Port(port.description(), port.vendor(), port.product())),
                identities.of(node));
    }

    /** Some systems have the node's name in the description already. */
    private static String description(String description, String node) {
        return description.contains(node) ? description : description + " (" + node + ")";
    }

    @Override
    public String identity(ProbeAddress address) throws LinkException {
        return identities.of(nodes.resolve(portOf(address).path()));
    }

    @Override
    public ProbeLink open(ProbeAddress address, Profile profile, Ticker ticker, LinkListener listener)
            throws LinkException {
        PortAddress at = portOf(address);
        requireSerial(profile);
        return join(at, profile, ticker, listener);
    }

    private static PortAddress portOf(ProbeAddress address) throws LinkException {
        if (!address.scheme().equals(SCHEME)) {
            throw new LinkException("a serial address begins with \"serial:\", got \"" + address + "\"");
        }
        return PortAddress.of(address.path());
    }

    private static void requireSerial(Profile profile) throws LinkException {
        boolean radio = profile.link()
                .filter(l -> l instanceof Link.BleConnected || l instanceof Link.BleAdvertising)
                .isPresent();
        if (radio) {
            throw new LinkException("profile " + profile.id()
                    + " is for Bluetooth, not for a serial port: choose another profile or address");
        }
    }

    private SerialLink join(PortAddress at, Profile profile, Ticker ticker, LinkListener listener)
            throws LinkException {
        synchronized (buses) {
            Path node = nodes.resolve(at.path());
            buses.removeIf(Bus::isClosed);
            Optional<Bus> shared = buses.stream()
                    .filter(b -> isModbus(profile) && b.isShareable() && b.isAt(node))
                    .findFirst();
            if (shared.isPresent()) {
                requireSameLine(shared.get().place(), profile);
                return joined(shared.get(), at, profile, listener);
            }
            Bus bus = Bus.open(place(at.path(), node, profile), isModbus(profile), ticker);
            buses.add(bus);
            // After the port, because that loads the library; before the link, so that none is left out.
            if (hooked.compareAndSet(false, true)) {
                opener.beforeShutdown(threads.newThread(this::closeAll));
            }
            try {
                return joined(bus, at, profile, listener);
            } catch (LinkException e) {
                bus.abandon();
                throw e;
            }
        }
    }

    private static SerialLink joined(Bus bus, PortAddress at, Profile profile, LinkListener listener)
            throws LinkException {
        try {
            return bus.join(profile, at.unit(), listener);
        } catch (IllegalArgumentException e) {
            throw new LinkException(String.valueOf(e.getMessage()), e);
        }
    }

    private SerialPlace place(String path, Path node, Profile profile) {
        String identity = identities.of(node);
        return new SerialPlace(
                path,
                identity.isEmpty() ? nodes.lasting(path, node) : nodes.lastingSocket(path, node),
                identity,
                LineSettings.of(profile),
                nodes,
                identities,
                opener,
                threads);
    }

    private static boolean isModbus(Profile profile) {
        return profile.link().filter(l -> l instanceof Link.ModbusRtu).isPresent();
    }

    private static void requireSameLine(SerialPlace place, Profile profile) throws LinkException {
        SerialLine wanted = LineSettings.of(profile);
        if (!wanted.equals(place.line())) {
            throw new LinkException(place.path() + " runs at " + LineSettings.words(place.line())
                    + " for another probe, and profile " + profile.id() + " needs " + LineSettings.words(wanted)
                    + ": set both devices alike, or use two ports");
        }
    }

    /** The library closes its ports when the program is told to end; that is no unplugged gauge, so links end first. */
    private void closeAll() {
        buses.forEach(Bus::close);
    }
}
