package settlemark.link;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bluez.LEAdvertisement1;
import org.freedesktop.dbus.interfaces.Properties;
import org.freedesktop.dbus.types.UInt16;
import org.freedesktop.dbus.types.Variant;

/** Our advertisement. Its properties are asked for one by one or all, and told when they change. */
public final class BleServedAdvert extends BleServedObject implements LEAdvertisement1, Properties {
    static final String TYPE = "org.bluez.LEAdvertisement1";

    private final Map<String, Variant<?>> serviceData = new HashMap<>();
    private final Map<UInt16, Variant<?>> companyData = new HashMap<>();

    /** It always allows connections: an advertisement that does not hides the adapter's address behind a random one. */
    BleServedAdvert(String path, String name, List<UUID> services) {
        super(path, TYPE);
        set("Type", new Variant<>("peripheral"));
        set("LocalName", new Variant<>(name));
        set("ServiceUUIDs", new Variant<>(services.stream().map(UUID::toString).toArray(String[]::new)));
    }

    /** @return the property that has changed */
    synchronized Map<String, Variant<?>> serviceData(UUID service, byte[] bytes) {
        serviceData.put(service.toString(), new Variant<>(bytes));
        return changed("ServiceData", new Variant<>(new HashMap<>(serviceData), "a{sv}"));
    }

    /** @return the property that has changed */
    synchronized Map<String, Variant<?>> companyData(int company, byte[] bytes) {
        companyData.put(new UInt16(company), new Variant<>(bytes));
        return changed("ManufacturerData", new Variant<>(new HashMap<>(companyData), "a{qv}"));
    }

    private Map<String, Variant<?>> changed(String property, Variant<?> value) {
        set(property, value);
        Map<String, Variant<?>> changed = new HashMap<>();
        changed.put(property, value);
        return changed;
    }

    @Override
    public void Release() {}

    @Override
    @SuppressWarnings({"unchecked", "TypeParameterUnusedInFormals"})
    public <A> A Get(String type, String property) {
        return (A) java.util.Objects.requireNonNull(properties().get(property), property);
    }

    @Override
    public <A> void Set(String type, String property, A value) {
        throw new UnsupportedOperationException("nobody but ourselves sets what we advertise");
    }

    @Override
    public Map<String, Variant<?>> GetAll(String type) {
        return properties();
    }
}
