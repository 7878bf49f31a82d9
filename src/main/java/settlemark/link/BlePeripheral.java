package settlemark.link;

import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BiConsumer;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.types.Variant;
import settlemark.profile.Profile;
import settlemark.profile.Source;
import settlemark.session.LinkException;

/**
 * The other end of a Bluetooth link: this computer as a probe. Serves on one adapter what a profile describes, with the
 * bytes that it is given, and advertises it. When the service or the adapter goes and comes back, it is registered again.
 * Any thread may send and close.
 */
public final class BlePeripheral implements AutoCloseable {
    private static final String ROOT = "/settlemark/probe";
    private static final String GATT_MANAGER = "org.bluez.GattManager1";
    private static final String ADVERTISING_MANAGER = "org.bluez.LEAdvertisingManager1";
    private static final Duration CLOSE_LIMIT = Duration.ofSeconds(2);
    private static final long LOOK_NANOS = 200_000_000L;

    private final Profile profile;
    private final Optional<String> adapter;
    private final ThreadFactory threads;
    private final BleCentral central;
    private final BleServedTree tree;
    private final BleServedAdvert advert;
    private final Thread thread;
    private volatile String served = "";
    private volatile boolean closed;
    private volatile String trouble = "";

    private BlePeripheral(Settings settings, String bus, BiConsumer<UUID, byte[]> written, String demand)
            throws LinkException {
        this.profile = settings.profile();
        this.adapter = settings.adapter();
        this.threads = settings.threads();
        this.central = new BleCentral(bus, threads, BleSettings.USUAL);
        this.tree = new BleServedTree(ROOT, profile, written, demand);
        this.advert = new BleServedAdvert("/settlemark/advert", settings.name(), tree.advertised());
        this.thread = threads.newThread(this::run);
        this.thread.setName("link-probe-" + settings.name());
    }

    /**
     * What to serve and where.
     *
     * @param profile of the probe
     * @param name that it advertises; a long one leaves no room for anything else
     * @param adapter address or name of the adapter, empty for the first
     * @param threads makes the threads, which are named here
     */
    public record Settings(Profile profile, String name, Optional<String> adapter, ThreadFactory threads) {}

    /**
     * Starts to serve and advertise.
     *
     * @param written told which characteristic was written to, and what; called from a thread of the bus
     * @throws LinkException with the remedy, where Bluetooth cannot be used
     */
    public static BlePeripheral start(Settings settings, BiConsumer<UUID, byte[]> written) throws LinkException {
        return start(settings, BleHost.systemBus(), written);
    }

    static BlePeripheral start(Settings settings, String bus, BiConsumer<UUID, byte[]> written) throws LinkException {
        return start(settings, bus, written, "");
    }

    /** @param demand of whoever wants a value, as the Bluetooth service writes it, such as {@code encrypt-} */
    static BlePeripheral start(Settings settings, String bus, BiConsumer<UUID, byte[]> written, String demand)
            throws LinkException {
        BlePeripheral made = new BlePeripheral(settings, bus, written, demand);
        try {
            made.register(made.central.adapter(made.adapter));
        } catch (BleFault fault) {
            made.central.close();
            throw new LinkException(fault.words(), fault);
        } catch (BluezError e) {
            made.central.close();
            throw new LinkException(BleWords.general("the simulated probe", e), e);
        }
        made.thread.start();
        return made;
    }

    /**
     * Says something: a value that notifies or is read, a descriptor, or data of an advertisement.
     *
     * @param input index in the profile's inputs
     * @return false where it went nowhere because the service is away
     */
    public boolean send(int input, byte[] bytes) {
        Optional<BleServedNote> note = tree.note(input);
        if (note.isPresent()) {
            note.get().hold(bytes);
            return true;
        }
        try {
            Optional<BleServedValue> value = tree.value(input);
            if (value.isPresent()) {
                value.get().hold(bytes);
                if (value.get().isListenedTo()) {
                    Map<String, Variant<?>> changed = new HashMap<>();
                    changed.put("Value", new Variant<>(bytes));
                    central.tell(value.get().path(), Bluez.CHARACTERISTIC, changed);
                }
            } else {
                central.tell(advert.path(), BleServedAdvert.TYPE, advertised(input, bytes));
            }
            return trouble.isEmpty();
        } catch (BluezError e) {
            return false;
        }
    }

    private Map<String, Variant<?>> advertised(int input, byte[] bytes) {
        Source source =
                profile.messages().get(profile.inputs().get(input).message()).source();
        if (source instanceof Source.ServiceData data) {
            return advert.serviceData(data.service(), bytes);
        }
        if (source instanceof Source.CompanyData data) {
            return advert.companyData(data.company(), bytes);
        }
        throw new IllegalArgumentException("input " + input + " of profile " + profile.id() + " is not Bluetooth");
    }

    /** Whether somebody has subscribed to a value that notifies. */
    public boolean isListenedTo(int input) {
        return tree.value(input).map(BleServedValue::isListenedTo).orElse(false);
    }

    /** The address that it has for others: its adapter's. */
    public String address() {
        return central.adapterName(served);
    }

    /** Why it cannot be heard now, in a sentence; empty where it can. */
    public String trouble() {
        return trouble;
    }

    private void register(String path) throws BleFault, BluezError {
        served = path;
        try {
            central.exportAnew(ROOT, tree);
            for (BleServedObject object : tree.objects()) {
                central.exportAnew(object.path(), object);
            }
            central.exportAnew(advert.path(), advert);
        } catch (LinkException e) {
            throw BleFault.passing(String.valueOf(e.getMessage()));
        }
        Map<String, Variant<?>> options = new HashMap<>();
        if (!tree.objects().isEmpty()) {
            once(path, GATT_MANAGER, "RegisterApplication", ROOT, options);
        }
        once(path, ADVERTISING_MANAGER, "RegisterAdvertisement", advert.path(), options);
    }

    private void once(String path, String type, String member, String object, Map<String, Variant<?>> options)
            throws BluezError {
        try {
            central.call(path, type, member, "oa{sv}", new DBusPath(object), options);
        } catch (BluezError e) {
            if (!e.is("AlreadyExists")) {
                throw e;
            }
        }
    }

    /** Registers again whenever that was lost. */
    private void run() {
        long mark = mark();
        while (!closed) {
            LockSupport.parkNanos(LOOK_NANOS);
            if (!closed && (mark != mark() || !trouble.isEmpty())) {
                tree.unlistened();
                try {
                    String path = central.adapter(adapter);
                    served = path;
                    mark = mark();
                    register(path);
                    trouble = "";
                } catch (BleFault fault) {
                    trouble = fault.words();
                } catch (BluezError e) {
                    trouble = BleWords.general("the simulated probe", e);
                }
            }
        }
    }

    /** Differs after the service, the bus or the adapter has gone. */
    private long mark() {
        return central.hearing().mark(served + "/self");
    }

    @Override
    public void close() {
        closed = true;
        LockSupport.unpark(thread);
        Aside.ended(thread, CLOSE_LIMIT);
        central.close();
    }
}
