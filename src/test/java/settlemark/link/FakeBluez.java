package settlemark.link;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.connections.impl.DBusConnection;
import org.freedesktop.dbus.connections.impl.DBusConnectionBuilder;
import org.freedesktop.dbus.exceptions.DBusException;
import org.freedesktop.dbus.interfaces.ObjectManager;
import org.freedesktop.dbus.types.Variant;

/**
 * A Bluetooth service of a test's own on a private bus, as BlueZ's D-Bus interface describes it: one adapter, and devices
 * on the air that are told of while it scans. What each call does can be scripted.
 */
final class FakeBluez implements AutoCloseable {
    static final String HCI0 = "/org/bluez/hci0";

    final FakeAdapter adapter;
    final FakeAgents agents;
    volatile boolean refuses;
    private final DBusConnection connection;
    private final Map<String, FakeObject> objects = new ConcurrentSkipListMap<>();
    private final List<FakeDevice> air = new CopyOnWriteArrayList<>();
    private final List<String> calls = new CopyOnWriteArrayList<>();
    private final AtomicInteger atATime = new AtomicInteger();
    private final AtomicInteger mostAtATime = new AtomicInteger();
    private final ScheduledExecutorService clock = Executors.newScheduledThreadPool(2, Fixtures.THREADS);

    FakeBluez(String address) throws DBusException {
        connection = DBusConnectionBuilder.forAddress(address).withShared(false).build();
        connection.exportObject("/", new Root());
        agents = new FakeAgents(this, connection);
        connection.exportObject("/org/bluez", agents);
        adapter = new FakeAdapter(this, HCI0);
        add(adapter);
        connection.requestBusName("org.bluez");
        clock.scheduleWithFixedDelay(this::advertise, 20, 20, TimeUnit.MILLISECONDS);
    }

    /** A second adapter, on which programs may serve devices that the first one hears. */
    FakeServingAdapter serving() {
        FakeServingAdapter second = new FakeServingAdapter(this, connection);
        add(second);
        return second;
    }

    /** A device on the air. */
    FakeDevice device(String address, String name) {
        FakeDevice device = new FakeDevice(this, address, name);
        air.add(device);
        return device;
    }

    private void advertise() {
        if (adapter.isTrue("Powered") && adapter.isTrue("Discovering") && objects.containsKey(HCI0)) {
            air.forEach(FakeDevice::advertise);
        }
    }

    List<FakeDevice> air() {
        return air;
    }

    void later(long millis, Runnable what) {
        clock.schedule(what, millis, TimeUnit.MILLISECONDS);
    }

    /** Devices that were being set up at the same time, at most; a device is until its services are resolved. */
    int mostAtATime() {
        return mostAtATime.get();
    }

    void setUp(boolean begins) {
        int now = begins ? atATime.incrementAndGet() : atATime.decrementAndGet();
        mostAtATime.accumulateAndGet(now, Math::max);
    }

    void log(String call) {
        calls.add(call);
    }

    List<String> calls() {
        return List.copyOf(calls);
    }

    long count(String call) {
        return calls.stream().filter(call::equals).count();
    }

    boolean has(String path) {
        return objects.containsKey(path);
    }

    void add(FakeObject object) {
        try {
            objects.put(object.path, object);
            connection.exportObject(object.path, object);
            signal(
                    "/",
                    "org.freedesktop.DBus.ObjectManager",
                    "InterfacesAdded",
                    "oa{sa{sv}}",
                    new DBusPath(object.path),
                    object.interfaces());
        } catch (DBusException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Without a word about what lies below. */
    void remove(String path) {
        FakeObject object = Objects.requireNonNull(objects.remove(path));
        connection.unExportObject(path);
        signal(
                "/",
                "org.freedesktop.DBus.ObjectManager",
                "InterfacesRemoved",
                "oas",
                new DBusPath(path),
                List.of(object.type));
    }

    void removeBelow(String path) {
        new ArrayList<>(objects.keySet())
                .stream().filter(p -> p.startsWith(path + "/")).forEach(this::remove);
    }

    void tell(String path, String type, Map<String, Variant<?>> changed) {
        signal(path, "org.freedesktop.DBus.Properties", "PropertiesChanged", "sa{sv}as", type, changed, List.of());
    }

    void signal(String path, String type, String member, String signature, Object... arguments) {
        try {
            connection.sendMessage(
                    connection.getMessageFactory().createSignal(null, path, type, member, signature, arguments));
        } catch (DBusException e) {
            throw new IllegalStateException(e);
        } catch (RuntimeException e) {
            // The bus is gone, as some tests will have it.
            return;
        }
    }

    @Override
    public void close() {
        clock.shutdownNow();
        connection.disconnect();
    }

    /** The list of all objects. */
    private final class Root implements ObjectManager {
        @Override
        public Map<DBusPath, Map<String, Map<String, Variant<?>>>> GetManagedObjects() {
            if (refuses) {
                throw new org.freedesktop.dbus.errors.AccessDenied("Rejected send message");
            }
            Map<DBusPath, Map<String, Map<String, Variant<?>>>> all = new HashMap<>();
            new TreeMap<>(objects).forEach((path, object) -> all.put(new DBusPath(path), object.interfaces()));
            return all;
        }

        @Override
        public String getObjectPath() {
            return "/";
        }
    }
}
