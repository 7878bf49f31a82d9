package settlemark.link;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Semaphore;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.interfaces.DBus;
import org.freedesktop.dbus.interfaces.DBusInterface;
import org.freedesktop.dbus.interfaces.ObjectManager;
import org.freedesktop.dbus.interfaces.Properties;
import org.freedesktop.dbus.types.Variant;
import org.jspecify.annotations.Nullable;
import settlemark.session.LinkException;

/**
 * This computer's end of all Bluetooth links: the bus, the service's objects, the adapters. Set up when first asked for,
 * and again by whoever asks first after the bus or the service has gone.
 */
final class BleCentral implements BleEars.Gone {
    private static final String BUS = "org.freedesktop.DBus";
    private static final String PROPERTIES = "org.freedesktop.DBus.Properties";
    private static final BooleanSupplier NEVER = () -> false;

    private final String address;
    private final ThreadFactory threads;
    private final BleSettings settings;
    private final BluezObjects objects = new BluezObjects();
    private final BleHearing hearing = new BleHearing();
    private final BleAdapters adapters = new BleAdapters(this);

    private final BleEars ears = new BleEars(objects, hearing, this);
    private final Map<String, BleScan> scans = new ConcurrentHashMap<>();
    private final Map<String, Semaphore> turns = new ConcurrentHashMap<>();

    /** Counts the appearances and disappearances of the service. */
    private final AtomicLong serviceTurn = new AtomicLong();

    private volatile @Nullable BluezBus bus;
    private volatile boolean loaded;
    private String owner = "";
    /** Paths of devices that a person paired through this program. */
    private final Set<String> agreed = ConcurrentHashMap.newKeySet();

    BleCentral(String address, ThreadFactory threads, BleSettings settings) {
        this.address = address;
        this.threads = threads;
        this.settings = settings;
    }

    BleSettings settings() {
        return settings;
    }

    ThreadFactory threads() {
        return threads;
    }

    BluezObjects objects() {
        return objects;
    }

    BleEars ears() {
        return ears;
    }

    BleHearing hearing() {
        return hearing;
    }

    // --- the bus and the service -----------------------------------------------------------------------------------

    /** Sets up what is not there. */
    void ready() throws BleFault {
        BluezBus now = bus;
        if (now != null && !now.isLost() && loaded) {
            return;
        }
        synchronized (this) {
            try {
                load(connected());
            } catch (BluezError e) {
                throw e.is("AccessDenied") || e.is("NameHasNoOwner") || e.is("ServiceUnknown")
                        ? BleFault.lasting(BleWords.general("this computer", e))
                        : BleFault.passing(BleWords.general("this computer", e));
            }
        }
    }

    private BluezBus connected() throws BleFault, BluezError {
        BluezBus now = bus;
        if (now != null && !now.isLost()) {
            return now;
        }
        if (now != null) {
            now.close(threads);
        }
        loaded = false;
        owner = "";
        try {
            BluezBus fresh = BluezBus.open(address, ears);
            bus = fresh;
            fresh.listen(DBus.NameOwnerChanged.class, BUS);
            fresh.listen("org.freedesktop.login1.Manager", "PrepareForSleep");
            return fresh;
        } catch (LinkException e) {
            throw BleFault.lasting(e);
        }
    }

    private void load(BluezBus now) throws BluezError, BleFault {
        if (loaded) {
            return;
        }
        long turn = serviceTurn.get();
        BluezBus.Target daemon = new BluezBus.Target(BUS, "/org/freedesktop/DBus", BUS);
        String found = String.valueOf(now.call(daemon, "GetNameOwner", settings.call(), NEVER, "s", Bluez.SERVICE)[0]);
        if (!found.equals(owner)) {
            follow(now, found);
        }
        objects.expectLoad();
        BluezBus.Target root = new BluezBus.Target(Bluez.SERVICE, "/", Bluez.OBJECTS);
        objects.load(now.call(root, "GetManagedObjects", settings.call(), NEVER, "")[0]);
        if (turn != serviceTurn.get()) {
            throw BleFault.passing("the Bluetooth service is starting; it is tried again");
        }
        loaded = true;
    }

    /** Listens to this owner of the service's name, and to none before. */
    private void follow(BluezBus now, String found) throws BluezError {
        if (!owner.isEmpty()) {
            now.unlisten(Properties.PropertiesChanged.class, owner);
            now.unlisten(ObjectManager.InterfacesAdded.class, owner);
            now.unlisten(ObjectManager.InterfacesRemoved.class, owner);
        }
        owner = found;
        now.listen(Properties.PropertiesChanged.class, found);
        now.listen(ObjectManager.InterfacesAdded.class, found);
        now.listen(ObjectManager.InterfacesRemoved.class, found);
    }

    Object[] call(String path, String type, String member, String signature, Object... arguments) throws BluezError {
        return call(path, type, member, settings.call(), NEVER, signature, arguments);
    }

    Object[] call(
            String path,
            String type,
            String member,
            Duration limit,
            BooleanSupplier giveUp,
            String signature,
            Object... arguments)
            throws BluezError {
        BluezBus now = bus;
        if (now == null) {
            throw new BluezError(BluezError.BUS_LOST, "not connected yet");
        }
        return now.call(new BluezBus.Target(Bluez.SERVICE, path, type), member, limit, giveUp, signature, arguments);
    }

    void export(String path, DBusInterface object) throws LinkException {
        BluezBus now = bus;
        if (now == null) {
            throw new LinkException("the message bus is not connected: try again");
        }
        now.export(path, object);
    }

    /** Shows an object, in the place of what was shown there before. */
    void exportAnew(String path, DBusInterface object) throws LinkException {
        unexport(path);
        export(path, object);
    }

    /** Tells of changed properties of an object that we show. */
    void tell(String path, String type, Map<String, Variant<?>> properties) throws BluezError {
        BluezBus now = bus;
        if (now == null) {
            throw new BluezError(BluezError.BUS_LOST, "not connected yet");
        }
        now.changed(path, type, properties);
    }

    void unexport(String path) {
        BluezBus now = bus;
        if (now != null) {
            now.unexport(path);
        }
    }

    void close() {
        BluezBus now = bus;
        bus = null;
        loaded = false;
        if (now != null) {
            now.close(threads);
        }
        forget();
    }

    // --- adapters, scans, turns ------------------------------------------------------------------------------------

    /**
     * The adapter to use, switched on.
     *
     * @param wanted address or name of the adapter, empty for the first
     * @return its path
     */
    String adapter(Optional<String> wanted) throws BleFault {
        ready();
        return adapters.choose(wanted);
    }

    BleAdapters adapters() {
        return adapters;
    }

    String adapterName(String path) {
        return BluezValues.text(objects.property(path, Bluez.ADAPTER, "Address"))
                .orElse(path);
    }

    BleScan scan(String adapter) {
        return scans.computeIfAbsent(adapter, a -> new BleScan(this, a));
    }

    long lastHeardNanos(String adapter) {
        return hearing.lastNanos(adapter);
    }

    /** Waits for the adapter's only turn to connect; false where it was given up. */
    boolean takeTurn(String adapter, BooleanSupplier giveUp) {
        Semaphore turn = turns.computeIfAbsent(adapter, a -> new Semaphore(1, true));
        try {
            while (!giveUp.getAsBoolean()) {
                if (turn.tryAcquire(100, TimeUnit.MILLISECONDS)) {
                    return true;
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        return false;
    }

    void giveTurn(String adapter) {
        Semaphore turn = turns.get(adapter);
        if (turn != null) {
            turn.release();
        }
    }

    // --- bonds -----------------------------------------------------------------------------------------------------

    /** A person wants this device to be paired. */
    void agree(String device) {
        agreed.add(device);
    }

    boolean isAgreed(String device) {
        return agreed.contains(device);
    }

    void disagree(String device) {
        agreed.remove(device);
    }

    boolean isPaired(String device) {
        return BluezValues.isTrue(objects.property(device, Bluez.DEVICE, "Paired"));
    }

    /** The same as the service says it at this moment; what it has signalled may not have been filed yet. */
    boolean isPairedNow(String device) throws BluezError {
        Object[] answer = call(device, PROPERTIES, "Get", "ss", Bluez.DEVICE, "Paired");
        return answer.length > 0 && BluezValues.isTrue(answer[0]);
    }

    /** Removes all that this computer knows of a device, its bond as well. */
    void forget(String device) throws BluezError {
        disagree(device);
        call(Bluez.adapterOf(device), Bluez.ADAPTER, "RemoveDevice", "o", new DBusPath(device));
    }

    // --- what has gone; told on the bus's thread -------------------------------------------------------------------

    @Override
    public void busGone() {
        loaded = false;
        forget();
    }

    @Override
    public void serviceTurned() {
        serviceTurn.incrementAndGet();
        loaded = false;
        forget();
    }

    @Override
    public void adapterGone(String path) {
        adapters.left(path);
        discard(path);
    }

    @Override
    public void slept() {
        adapters.slept();
        hearing.allLost();
    }

    private void discard(String adapter) {
        BleScan scan = scans.remove(adapter);
        if (scan != null) {
            scan.discard();
        }
    }

    private void forget() {
        adapters.allLeft();
        objects.clear();
        List.copyOf(scans.keySet()).forEach(this::discard);
        hearing.allLost();
    }

    /** Values of another type than the service's interface says, and faults in taking signals. */
    long oddSignals() {
        BluezBus now = bus;
        return ears.oddValues() + (now == null ? 0 : now.faults());
    }
}
