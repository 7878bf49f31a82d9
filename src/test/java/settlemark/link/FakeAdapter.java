package settlemark.link;

import java.util.Map;
import java.util.TreeMap;
import org.bluez.Adapter1;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.exceptions.DBusExecutionException;
import org.freedesktop.dbus.types.Variant;
import org.jspecify.annotations.Nullable;

/** An adapter of the fake service. */
class FakeAdapter extends FakeObject implements Adapter1 {
    volatile Map<String, Object> filter = Map.of();
    volatile @Nullable DBusExecutionException startFault;

    FakeAdapter(FakeBluez service, String path) {
        super(service, path, "org.bluez.Adapter1");
        set("Address", "00:AA:01:00:00:00");
        set("Powered", true);
        set("Discovering", false);
    }

    @Override
    public void StartDiscovery() {
        service.log("StartDiscovery");
        DBusExecutionException fault = startFault;
        if (fault != null) {
            throw fault;
        }
        if (!isTrue("Powered")) {
            throw new org.bluez.Error.NotReady("Resource Not Ready");
        }
        change("Discovering", true);
    }

    @Override
    public void StopDiscovery() {
        service.log("StopDiscovery");
        if (!isTrue("Discovering")) {
            throw new org.bluez.Error.Failed("No discovery started");
        }
        change("Discovering", false);
    }

    @Override
    public void SetDiscoveryFilter(Map<String, Variant<?>> given) {
        Map<String, Object> plain = new TreeMap<>();
        given.forEach((key, value) -> plain.put(key, value.getValue()));
        filter = plain;
    }

    @Override
    public void RemoveDevice(DBusPath device) {
        service.log("RemoveDevice " + device.getPath());
        service.removeBelow(device.getPath());
        service.remove(device.getPath());
    }

    @Override
    public String[] GetDiscoveryFilters() {
        return new String[0];
    }

    @Override
    public DBusPath ConnectDevice(Map<String, Variant<?>> options) {
        throw new org.bluez.Error.Failed("not offered");
    }
}
