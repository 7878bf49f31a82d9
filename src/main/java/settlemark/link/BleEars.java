package settlemark.link;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;

/**
 * Takes the Bluetooth service's signals on the bus's own thread: stamps and hands values to their links, files the rest.
 * Never calls the bus, never waits.
 */
final class BleEars implements BluezBus.Ears {
    private final BluezObjects objects;
    private final BleHearing hearing;
    private final Gone gone;
    private final Map<String, Route> routes = new ConcurrentHashMap<>();
    private final Map<String, BleAdverts> adverts = new ConcurrentHashMap<>();
    private final AtomicLong oddValues = new AtomicLong();

    /** Told on the bus's thread what has gone. */
    interface Gone {
        void busGone();

        /** The service has gone or appeared. */
        void serviceTurned();

        void adapterGone(String path);

        /** The computer slept and is awake again. */
        void slept();
    }

    /** Where the values of one characteristic go. */
    record Route(int input, BleInbox inbox) {}

    BleEars(BluezObjects objects, BleHearing hearing, Gone gone) {
        this.objects = objects;
        this.hearing = hearing;
        this.gone = gone;
    }

    void route(String characteristic, Route route) {
        routes.put(characteristic, route);
    }

    void unroute(List<String> characteristics) {
        characteristics.forEach(routes::remove);
    }

    void listen(String device, BleAdverts to) {
        adverts.put(device, to);
    }

    void unlisten(String device) {
        adverts.remove(device);
    }

    /** How many places values go to; steady over reconnections. */
    int handlers() {
        return routes.size() + adverts.size();
    }

    /** Values of another type than the service's interface says. */
    long oddValues() {
        return oddValues.get();
    }

    @Override
    public void signal(String path, String member, Object[] arguments) {
        switch (member) {
            case "PropertiesChanged" -> propertiesChanged(path, arguments);
            case "InterfacesAdded" -> added(String.valueOf(arguments[0]), arguments[1]);
            case "InterfacesRemoved" -> removed(String.valueOf(arguments[0]), BluezValues.texts(arguments[1]));
            case "NameOwnerChanged" -> {
                if (Bluez.SERVICE.equals(arguments[0])) {
                    gone.serviceTurned();
                }
            }
            case "PrepareForSleep" -> {
                if (!BluezValues.isTrue(arguments[0])) {
                    gone.slept();
                }
            }
            default -> {}
        }
    }

    @Override
    public void lost() {
        gone.busGone();
    }

    private void propertiesChanged(String path, Object[] arguments) {
        String type = String.valueOf(arguments[0]);
        if (type.equals(Bluez.CHARACTERISTIC) && arguments[1] instanceof Map<?, ?> map && map.containsKey("Value")) {
            value(path, map.get("Value"));
            return;
        }
        Map<String, Object> changed = BluezValues.properties(arguments[1]);
        List<String> withdrawn = arguments.length > 2 ? BluezValues.texts(arguments[2]) : List.of();
        objects.changed(path, type, changed, withdrawn);
        if (type.equals(Bluez.DEVICE)) {
            device(path, changed);
        }
        if (Boolean.FALSE.equals(changed.get(type.equals(Bluez.ADAPTER) ? "Powered" : "Connected"))) {
            hearing.lost(path);
        }
    }

    private void value(String path, @Nullable Object value) {
        Route route = routes.get(path);
        if (route == null) {
            return;
        }
        Optional<byte[]> bytes = BluezValues.bytes(value);
        if (bytes.isPresent()) {
            route.inbox().add(route.input(), bytes.get());
        } else {
            oddValues.incrementAndGet();
        }
    }

    private void device(String path, Map<String, Object> changed) {
        hearing.heard(path, changed);
        BleAdverts to = adverts.get(path);
        if (to != null) {
            to.heard(changed);
        }
    }

    private void added(String path, @Nullable Object interfaces) {
        objects.added(path, interfaces);
        if (BluezValues.plain(interfaces) instanceof Map<?, ?> map && map.containsKey(Bluez.DEVICE)) {
            device(path, BluezValues.properties(map.get(Bluez.DEVICE)));
        }
    }

    private void removed(String path, List<String> interfaces) {
        if (interfaces.contains(Bluez.ADAPTER)) {
            gone.adapterGone(path);
            // Its devices go with it, whether or not the service says so.
            objects.removedBelow(path);
        }
        objects.removed(path, interfaces);
        if (interfaces.contains(Bluez.ADAPTER) || interfaces.contains(Bluez.DEVICE)) {
            hearing.lost(path);
        } else if (routes.containsKey(path)) {
            // The device has changed its services under a link that listens to them.
            hearing.lost(Bluez.deviceOf(path));
        }
    }
}
