package settlemark.link;

import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import org.freedesktop.dbus.interfaces.DBusInterface;
import org.freedesktop.dbus.interfaces.Properties;
import org.freedesktop.dbus.types.Variant;

/** An object of the fake Bluetooth service: one interface and its properties. Public for the bus library's reflection. */
public abstract class FakeObject implements DBusInterface, Properties {
    final FakeBluez service;
    final String path;
    final String type;
    final Map<String, Variant<?>> properties = new ConcurrentHashMap<>();

    FakeObject(FakeBluez service, String path, String type) {
        this.service = service;
        this.path = path;
        this.type = type;
    }

    void set(String name, Object value) {
        properties.put(name, new Variant<>(value));
    }

    void set(String name, Object value, String signature) {
        properties.put(name, new Variant<>(value, signature));
    }

    /** Sets and tells. */
    void change(String name, Object value) {
        set(name, value);
        service.tell(path, type, Map.of(name, new Variant<>(value)));
    }

    boolean isTrue(String name) {
        Variant<?> value = properties.get(name);
        return value != null && Boolean.TRUE.equals(value.getValue());
    }

    Map<String, Map<String, Variant<?>>> interfaces() {
        return Map.of(type, new TreeMap<>(properties));
    }

    /** The value of a property that the object has. */
    final Object property(String name) {
        return Objects.requireNonNull(properties.get(name), name).getValue();
    }

    @Override
    @SuppressWarnings("unchecked")
    public <A> A Get(String ofType, String name) {
        return (A) property(name);
    }

    @Override
    public <A> void Set(String ofType, String name, A value) {
        service.log(name + "=" + (value instanceof Variant<?> v ? v.getValue() : value));
        change(name, value instanceof Variant<?> v ? v.getValue() : value);
    }

    @Override
    public Map<String, Variant<?>> GetAll(String ofType) {
        return Map.copyOf(properties);
    }

    @Override
    public String getObjectPath() {
        return path;
    }
}
