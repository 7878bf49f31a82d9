package settlemark.link;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.bluez.Device1;
import org.freedesktop.dbus.exceptions.DBusExecutionException;
import org.freedesktop.dbus.types.UInt16;
import org.freedesktop.dbus.types.Variant;

/** A device of the fake service. */
final class FakeDevice extends FakeObject implements Device1 {
    /** Faults of the next attempts to connect, in order. */
    final Queue<DBusExecutionException> connectFaults = new ConcurrentLinkedQueue<>();

    final List<FakeCharacteristic> characteristics = new ArrayList<>();
    private final Map<String, String> services = new HashMap<>();
    private final Map<String, byte[]> serviceData = new HashMap<>();
    private final Map<Integer, byte[]> companyData = new HashMap<>();

    volatile boolean onAir = true;
    volatile long resolveMillis = 20;
    /** After the services count as resolved; negative for never. */
    volatile long exportMillis;

    FakeDevice(FakeBluez service, String address, String name) {
        super(service, Bluez.devicePath(FakeBluez.HCI0, address), "org.bluez.Device1");
        set("Address", address);
        set("Name", name);
        set("Connected", false);
        set("ServicesResolved", false);
        set("Paired", false);
    }

    /** @return the new characteristic; its service is made where it is not there yet */
    FakeCharacteristic characteristic(String serviceUuid, String uuid) {
        String servicePath = services.computeIfAbsent(serviceUuid, u -> path + "/service" + (services.size() + 1));
        FakeCharacteristic made =
                new FakeCharacteristic(this, servicePath, servicePath + "/char" + (characteristics.size() + 1), uuid);
        characteristics.add(made);
        return made;
    }

    void serviceData(String uuid, byte... bytes) {
        serviceData.put(uuid, bytes);
    }

    void companyData(int company, byte... bytes) {
        companyData.put(company, bytes);
    }

    /** One advertisement, as an adapter that scans tells of it with duplicates on. */
    void advertise() {
        if (!onAir || isTrue("Connected")) {
            return;
        }
        Map<String, Variant<?>> heard = new HashMap<>();
        heard.put("RSSI", new Variant<>((short) -60));
        if (!serviceData.isEmpty()) {
            Map<String, Variant<?>> data = new HashMap<>();
            serviceData.forEach((uuid, bytes) -> data.put(uuid, new Variant<>(bytes)));
            heard.put("ServiceData", new Variant<>(data, "a{sv}"));
        }
        if (!companyData.isEmpty()) {
            Map<UInt16, Variant<?>> data = new HashMap<>();
            companyData.forEach((company, bytes) -> data.put(new UInt16(company), new Variant<>(bytes)));
            heard.put("ManufacturerData", new Variant<>(data, "a{qv}"));
        }
        properties.putAll(heard);
        if (service.has(path)) {
            service.tell(path, type, heard);
        } else {
            service.add(this);
        }
    }

    @Override
    public void Connect() {
        service.log("Connect " + property("Address"));
        DBusExecutionException fault = connectFaults.poll();
        if (fault != null) {
            throw fault;
        }
        if (!onAir) {
            throw new org.bluez.Error.Failed("le-connection-abort-by-local");
        }
        service.setUp(true);
        change("Connected", true);
        service.later(resolveMillis, this::resolved);
    }

    private void resolved() {
        if (exportMillis == 0) {
            export();
        }
        service.setUp(false);
        change("ServicesResolved", true);
        if (exportMillis > 0) {
            service.later(exportMillis, this::export);
        }
    }

    private void export() {
        services.forEach((uuid, servicePath) -> {
            if (!service.has(servicePath)) {
                service.add(new FakeService(service, servicePath, uuid));
            }
        });
        for (FakeCharacteristic one : new ArrayDeque<>(characteristics)) {
            if (!service.has(one.path)) {
                service.add(one);
                one.descriptors().forEach(service::add);
            }
        }
    }

    /** The radio link breaks; by default the service keeps the device for a while. */
    void drop() {
        characteristics.forEach(c -> {
            if (c.notifying) {
                c.notifying = false;
                c.onStopNotify.run();
            }
        });
        change("Connected", false);
        change("ServicesResolved", false);
    }

    @Override
    public void Disconnect() {
        service.log("Disconnect");
        drop();
    }

    @Override
    public void ConnectProfile(String uuid) {}

    @Override
    public void DisconnectProfile(String uuid) {}

    @Override
    public void Pair() {
        service.log("Pair");
        service.agents.pair(path);
        change("Paired", true);
    }

    @Override
    public void CancelPairing() {}
}
