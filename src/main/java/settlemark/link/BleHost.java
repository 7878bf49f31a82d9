package settlemark.link;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.locks.LockSupport;
import org.jspecify.annotations.Nullable;
import settlemark.profile.Link;
import settlemark.profile.Profile;
import settlemark.profile.Source;
import settlemark.session.LinkException;
import settlemark.session.LinkListener;
import settlemark.session.PairingPerson;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeHost;
import settlemark.session.ProbeLink;
import settlemark.session.Ticker;

/**
 * Bluetooth Low Energy probes, through the BlueZ service of a Linux computer. Addresses are {@code ble:ADDRESS}, or
 * {@code ble:ADDRESS@ADAPTER} where the computer has more than one adapter. Nothing is touched before the first use.
 * Nothing is connected but what is opened. Safe to use from several threads.
 */
public final class BleHost implements ProbeHost, AutoCloseable {
    private static final String SCHEME = "ble";

    private final ThreadFactory threads;
    private final Optional<String> adapter;
    private final String bus;
    private final BleSettings settings;
    private @Nullable BleCentral made;
    private @Nullable Thread shutdown;
    private final Map<String, BleLink> links = new ConcurrentHashMap<>();

    /**
     * @param threads makes the threads of the links; they are named here
     * @param adapter address or name of the adapter that is used where an address names none; empty for the first
     */
    public BleHost(ThreadFactory threads, Optional<String> adapter) {
        this(threads, adapter, systemBus(), BleSettings.USUAL);
    }

    BleHost(ThreadFactory threads, Optional<String> adapter, String bus, BleSettings settings) {
        this.threads = threads;
        this.adapter = adapter;
        this.bus = bus;
        this.settings = settings;
    }

    /** The address that the environment gives for the system's bus, or the usual one. */
    static String systemBus() {
        String given = System.getenv("DBUS_SYSTEM_BUS_ADDRESS");
        return given == null || given.isEmpty() ? "unix:path=/run/dbus/system_bus_socket" : given;
    }

    @Override
    public String scheme() {
        return SCHEME;
    }

    @Override
    public List<FoundProbe> found() throws LinkException {
        return look().stream()
                .map(s -> new FoundProbe(
                        new ProbeAddress(
                                SCHEME, s.address() + adapter.map(a -> "@" + a).orElse("")),
                        s.name().isEmpty() ? "(no name)" : s.name(),
                        Optional.of(s.sighting()),
                        s.address(),
                        Optional.of(s.reception())))
                .toList();
    }

    /** A Bluetooth device's address stays with it, wherever it is heard. */
    @Override
    public String identity(ProbeAddress address) throws LinkException {
        return BlePlace.written(address.path()).address();
    }

    /**
     * Listens for some three seconds and tells which devices are in reach or connected, the strongest first.
     *
     * @throws LinkException with the remedy where Bluetooth cannot be used
     */
    public List<BleSeen> look() throws LinkException {
        BleCentral central = central();
        try {
            String path = central.adapter(adapter);
            BleScan scan = central.scan(path);
            try {
                scan.want(this);
                long end = System.nanoTime() + central.settings().look().toNanos();
                while (System.nanoTime() < end) {
                    LockSupport.parkNanos(Math.min(50_000_000, Math.max(1, end - System.nanoTime())));
                }
            } finally {
                scan.leave(this);
            }
            return BleSight.all(central, path);
        } catch (BleFault fault) {
            throw new LinkException(fault.words(), fault);
        }
    }

    @Override
    public ProbeLink open(ProbeAddress address, Profile profile, Ticker ticker, LinkListener listener)
            throws LinkException {
        if (!address.scheme().equals(SCHEME)) {
            throw new LinkException("a Bluetooth address begins with \"ble:\", got \"" + address + "\"");
        }
        BleCentral central = central();
        BlePlace.Written written = BlePlace.written(address.path());
        BlePlace place =
                new BlePlace(central, written.address(), written.adapter().or(() -> adapter), profile);
        boolean connected = isConnected(profile);
        BleLink link = new BleLink(place, connected, ticker, listener);
        link.onEnd(() -> links.remove(place.address(), link));
        BleLink former = links.get(place.address());
        if (former != null && former.isClosed()) {
            former.awaitEnd(settings.call());
        }
        admit(place, link);
        link.start(connected ? new BleConnected(place, link) : new BleAdvertising(place, link));
        return link;
    }

    private static boolean isConnected(Profile profile) throws LinkException {
        boolean characteristics =
                profile.messages().stream().anyMatch(m -> m.source() instanceof Source.Characteristic);
        Link how = profile.link().orElse(characteristics ? new Link.BleConnected() : new Link.BleAdvertising());
        boolean speaks = profile.messages().stream()
                .anyMatch(m -> m.source() instanceof Source.Characteristic
                        || m.source() instanceof Source.ServiceData
                        || m.source() instanceof Source.CompanyData);
        if (how instanceof Link.Serial || how instanceof Link.ModbusRtu || !speaks) {
            throw new LinkException("profile \"" + profile.id()
                    + "\" describes no Bluetooth probe: choose one with link \"ble\", or give a serial address");
        }
        return how instanceof Link.BleConnected;
    }

    private synchronized void admit(BlePlace place, BleLink link) throws LinkException {
        if (links.containsKey(place.address())) {
            throw new LinkException(place.words() + " is open already");
        }
        long there = links.values().stream().filter(link::sharesTurnsWith).count();
        if (there >= settings.linksPerAdapter()) {
            throw new LinkException(BleWords.full(place.adapter().orElse("of this computer"), there));
        }
        links.put(place.address(), link);
    }

    /** Names of this computer's adapters, such as {@code hci0}. */
    public List<String> adapters() throws LinkException {
        try {
            BleCentral central = central();
            central.ready();
            return central.objects().paths(Bluez.ADAPTER, "").stream()
                    .map(path -> path.substring(path.lastIndexOf('/') + 1))
                    .toList();
        } catch (BleFault fault) {
            throw new LinkException(fault.words(), fault);
        }
    }

    /** Devices that this computer is paired with. */
    public List<BleSeen> bonded() throws LinkException {
        BleCentral central = central();
        try {
            return BleSight.all(central, central.adapter(adapter)).stream()
                    .filter(BleSeen::bonded)
                    .toList();
        } catch (BleFault fault) {
            throw new LinkException(fault.words(), fault);
        }
    }

    /**
     * Removes what this computer knows of a device: its bond and its table of services.
     *
     * @throws LinkException where it is not known
     */
    public void forget(String address) throws LinkException {
        new BleBond(central(), adapter).forget(address);
    }

    /**
     * Pairs with a device, asking the person.
     *
     * @throws LinkException where it did not come to a bond
     */
    public void pair(String address, PairingPerson person) throws LinkException {
        new BleBond(central(), adapter).pair(address, person);
    }

    /** Made when first needed, so that no class of the bus is loaded where nobody asks for Bluetooth. */
    synchronized BleCentral central() {
        BleCentral central = made;
        if (central == null) {
            central = new BleCentral(bus, threads, settings);
            central.hearing().onLoss(path -> links.values().forEach(BleLink::wake));
            made = central;
            // The service would keep a probe connected, and so silent for everybody, after an interrupted program.
            Thread hook = threads.newThread(this::closeLinks);
            hook.setName("link-shutdown");
            Runtime.getRuntime().addShutdownHook(hook);
            shutdown = hook;
        }
        return central;
    }

    /** Closes all links and leaves the bus. */
    @Override
    public synchronized void close() {
        closeLinks();
        unhook();
        BleCentral central = made;
        if (central != null) {
            central.close();
        }
    }

    private void closeLinks() {
        List.copyOf(links.values()).forEach(BleLink::close);
    }

    private void unhook() {
        Thread hook = shutdown;
        shutdown = null;
        if (hook != null) {
            try {
                Runtime.getRuntime().removeShutdownHook(hook);
            } catch (IllegalStateException e) {
                // The program is being shut down: the hook runs.
            }
        }
    }
}
