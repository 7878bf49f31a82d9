package settlemark.link;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import org.bluez.GattCharacteristic1;
import org.bluez.GattManager1;
import org.bluez.LEAdvertisingManager1;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.connections.base.AbstractConnectionBase;
import org.freedesktop.dbus.connections.impl.DBusConnection;
import org.freedesktop.dbus.exceptions.DBusException;
import org.freedesktop.dbus.exceptions.DBusExecutionException;
import org.freedesktop.dbus.interfaces.ObjectManager;
import org.freedesktop.dbus.interfaces.Properties;
import org.freedesktop.dbus.types.Variant;

/**
 * An adapter on which programs serve: what one registers is a device on the air for the other adapter, with the values
 * that the program tells of.
 */
final class FakeServingAdapter extends FakeAdapter implements GattManager1, LEAdvertisingManager1 {
    static final String ADDRESS = "00:AA:01:01:00:01";
    private static final String HCI1 = "/org/bluez/hci1";

    private final DBusConnection connection;
    private final Map<String, FakeDevice> devices = new HashMap<>();

    FakeServingAdapter(FakeBluez service, DBusConnection connection) {
        super(service, HCI1);
        this.connection = connection;
        set("Address", ADDRESS);
    }

    /** One device a program; nobody else hears it by another name. */
    private synchronized FakeDevice device(String owner) {
        return devices.computeIfAbsent(owner, o -> {
            FakeDevice device = service.device(ADDRESS, "");
            device.onAir = false;
            return device;
        });
    }

    FakeDevice only() {
        return devices.values().iterator().next();
    }

    @Override
    public void RegisterApplication(DBusPath root, Map<String, Variant<?>> options) {
        String owner = AbstractConnectionBase.getCallInfo().getSource();
        service.log("RegisterApplication " + root.getPath());
        try {
            Map<DBusPath, Map<String, Map<String, Variant<?>>>> shown = connection
                    .getRemoteObject(owner, root.getPath(), ObjectManager.class)
                    .GetManagedObjects();
            Map<String, FakeCharacteristic> mirrors = new HashMap<>();
            shown.forEach((path, types) -> {
                Map<String, Variant<?>> characteristic = types.get(Bluez.CHARACTERISTIC);
                if (characteristic != null) {
                    mirrors.put(path.getPath(), mirror(owner, path.getPath(), characteristic, shown));
                }
            });
            connection.addSigHandler(Properties.PropertiesChanged.class, owner, signal -> {
                FakeCharacteristic mirror = mirrors.get(signal.getPath());
                Variant<?> value = signal.getPropertiesChanged().get("Value");
                if (mirror != null && value != null && mirror.notifying) {
                    mirror.send(BluezValues.bytes(value).orElseThrow());
                }
            });
        } catch (DBusException e) {
            throw new org.bluez.Error.Failed(String.valueOf(e.getMessage()));
        }
    }

    private FakeCharacteristic mirror(
            String owner,
            String path,
            Map<String, Variant<?>> characteristic,
            Map<DBusPath, Map<String, Map<String, Variant<?>>>> shown) {
        String service = text(
                Objects.requireNonNull(shown.get(new DBusPath(text(characteristic, "Service"))))
                        .get(Bluez.GATT_SERVICE),
                "UUID");
        FakeCharacteristic mirror = device(owner).characteristic(service, text(characteristic, "UUID"));
        GattCharacteristic1 own = remote(owner, path);
        mirror.reading = () -> {
            try {
                return own.ReadValue(Map.of());
            } catch (DBusException e) {
                throw new org.bluez.Error.Failed(String.valueOf(e.getMessage()));
            }
        };
        mirror.onStartNotify = () -> call(own::StartNotify);
        mirror.onStopNotify = () -> call(own::StopNotify);
        return mirror;
    }

    private interface Call {
        void run() throws DBusException;
    }

    private static void call(Call call) {
        try {
            call.run();
        } catch (DBusException | DBusExecutionException e) {
            throw new org.bluez.Error.Failed(String.valueOf(e.getMessage()));
        }
    }

    private GattCharacteristic1 remote(String owner, String path) {
        try {
            return connection.getRemoteObject(owner, path, GattCharacteristic1.class);
        } catch (DBusException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String text(@org.jspecify.annotations.Nullable Map<String, Variant<?>> properties, String name) {
        Object value = Objects.requireNonNull(Objects.requireNonNull(properties).get(name))
                .getValue();
        return value instanceof DBusPath path ? path.getPath() : value.toString();
    }

    @Override
    public void RegisterAdvertisement(DBusPath advert, Map<String, Variant<?>> options) {
        String owner = AbstractConnectionBase.getCallInfo().getSource();
        service.log("RegisterAdvertisement " + advert.getPath());
        try {
            Map<String, Variant<?>> said = connection
                    .getRemoteObject(owner, advert.getPath(), Properties.class)
                    .GetAll("org.bluez.LEAdvertisement1");
            FakeDevice device = device(owner);
            device.set("Name", text(said, "LocalName"));
            device.set("UUIDs", BluezValues.texts(said.get("ServiceUUIDs")).toArray(String[]::new));
            device.onAir = true;
        } catch (DBusException e) {
            throw new org.bluez.Error.Failed(String.valueOf(e.getMessage()));
        }
    }

    @Override
    public void UnregisterApplication(DBusPath application) {}

    @Override
    public void UnregisterAdvertisement(DBusPath advert) {}
}
