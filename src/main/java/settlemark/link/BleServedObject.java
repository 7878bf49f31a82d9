package settlemark.link;

import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import org.freedesktop.dbus.interfaces.DBusInterface;
import org.freedesktop.dbus.types.Variant;

/** An object that we show to the Bluetooth service: one interface and its properties. */
abstract class BleServedObject implements DBusInterface {
    private final String path;
    private final String type;
    private final Map<String, Variant<?>> properties = new ConcurrentHashMap<>();

    BleServedObject(String path, String type) {
        this.path = path;
        this.type = type;
    }

    final String path() {
        return path;
    }

    final String type() {
        return type;
    }

    final void set(String name, Variant<?> value) {
        properties.put(name, value);
    }

    final Map<String, Variant<?>> properties() {
        return new TreeMap<>(properties);
    }

    @Override
    public final String getObjectPath() {
        return path;
    }
}
