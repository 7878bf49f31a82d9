package settlemark.link;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Supplier;
import org.bluez.GattCharacteristic1;
import org.bluez.GattDescriptor1;
import org.bluez.datatypes.TwoTuple;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.FileDescriptor;
import org.freedesktop.dbus.types.UInt16;
import org.freedesktop.dbus.types.Variant;

/** A characteristic of a fake device; what a read gives and what a start of notifications does can be scripted. */
final class FakeCharacteristic extends FakeObject implements GattCharacteristic1 {
    private final List<FakeObject> descriptors = new ArrayList<>();
    volatile Supplier<byte[]> reading = () -> new byte[] {1};
    volatile Runnable onStartNotify = () -> {};
    volatile Runnable onStopNotify = () -> {};
    volatile boolean notifying;

    FakeCharacteristic(FakeDevice device, String servicePath, String path, String uuid) {
        super(device.service, path, "org.bluez.GattCharacteristic1");
        set("UUID", uuid);
        set("Service", new DBusPath(servicePath));
    }

    void descriptor(String uuid, byte... bytes) {
        descriptors.add(new Descriptor(this, uuid, bytes));
    }

    List<FakeObject> descriptors() {
        return descriptors;
    }

    void send(byte... bytes) {
        service.tell(path, type, Map.of("Value", new Variant<>(bytes)));
    }

    void sendOdd(Object value) {
        service.tell(path, type, Map.of("Value", new Variant<>(value)));
    }

    @Override
    public byte[] ReadValue(Map<String, Variant<?>> options) {
        service.log("ReadValue " + uuid());
        return reading.get();
    }

    @Override
    public void WriteValue(byte[] value, Map<String, Variant<?>> options) {
        service.log("WriteValue " + uuid() + " " + java.util.HexFormat.of().formatHex(value) + " "
                + Objects.requireNonNull(options.get("type")).getValue());
    }

    @Override
    public void StartNotify() {
        service.log("StartNotify " + uuid());
        notifying = true;
        onStartNotify.run();
    }

    @Override
    public void StopNotify() {
        service.log("StopNotify " + uuid());
        notifying = false;
        onStopNotify.run();
    }

    private String uuid() {
        return property("UUID").toString().substring(4, 8);
    }

    @Override
    public TwoTuple<FileDescriptor, UInt16> AcquireWrite(Map<String, Variant<?>> options) {
        throw new org.bluez.Error.Failed("not offered");
    }

    @Override
    public TwoTuple<FileDescriptor, UInt16> AcquireNotify(Map<String, Variant<?>> options) {
        throw new org.bluez.Error.Failed("not offered");
    }

    @Override
    public void Confirm() {}

    /** A descriptor with a fixed value. */
    private static final class Descriptor extends FakeObject implements GattDescriptor1 {
        private final byte[] bytes;

        Descriptor(FakeCharacteristic of, String uuid, byte[] bytes) {
            super(of.service, of.path + "/desc" + (of.descriptors.size() + 1), "org.bluez.GattDescriptor1");
            this.bytes = bytes;
            set("UUID", uuid);
            set("Characteristic", new DBusPath(of.path));
        }

        @Override
        public byte[] ReadValue(Map<String, Variant<?>> options) {
            service.log("ReadDescriptor");
            return bytes;
        }

        @Override
        public void WriteValue(byte[] value, Map<String, Variant<?>> options) {}
    }
}
