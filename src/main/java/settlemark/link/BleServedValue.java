package settlemark.link;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.BiConsumer;
import org.bluez.GattCharacteristic1;
import org.bluez.datatypes.TwoTuple;
import org.bluez.exceptions.BluezNotSupportedException;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.FileDescriptor;
import org.freedesktop.dbus.types.UInt16;
import org.freedesktop.dbus.types.Variant;

/** A characteristic of our own: holds its value, knows whether it is listened to, hands on what is written. */
final class BleServedValue extends BleServedObject implements GattCharacteristic1 {
    private final UUID uuid;
    private final BiConsumer<UUID, byte[]> written;
    private final Set<String> flags = new TreeSet<>();
    private final List<BleServedNote> notes = new ArrayList<>();
    private volatile byte[] value = new byte[0];
    private volatile boolean listened;

    BleServedValue(String path, String servicePath, UUID uuid, BiConsumer<UUID, byte[]> written) {
        super(path, Bluez.CHARACTERISTIC);
        this.uuid = uuid;
        this.written = written;
        set("UUID", new Variant<>(uuid.toString()));
        set("Service", new Variant<>(new DBusPath(servicePath)));
        set("Flags", new Variant<>(new String[0]));
    }

    UUID uuid() {
        return uuid;
    }

    /** @param flag as the Bluetooth service calls it, such as {@code notify} */
    void allow(String flag) {
        flags.add(flag);
        set("Flags", new Variant<>(flags.toArray(String[]::new)));
    }

    BleServedNote note(UUID descriptor) {
        BleServedNote note = new BleServedNote(path() + "/note" + notes.size(), path(), descriptor);
        notes.add(note);
        return note;
    }

    void hold(byte[] bytes) {
        value = bytes.clone();
    }

    boolean isListenedTo() {
        return listened;
    }

    void unlistened() {
        listened = false;
    }

    @Override
    public byte[] ReadValue(Map<String, Variant<?>> options) {
        return rest(value, options);
    }

    /** A long value is read in parts, each from an offset. */
    static byte[] rest(byte[] whole, Map<String, Variant<?>> options) {
        int offset = BluezValues.number(options.get("offset")).orElse(0);
        return java.util.Arrays.copyOfRange(whole, Math.min(offset, whole.length), whole.length);
    }

    @Override
    public void WriteValue(byte[] bytes, Map<String, Variant<?>> options) {
        written.accept(uuid, bytes.clone());
    }

    @Override
    public void StartNotify() {
        listened = true;
    }

    @Override
    public void StopNotify() {
        listened = false;
    }

    @Override
    public void Confirm() {}

    @Override
    public TwoTuple<FileDescriptor, UInt16> AcquireWrite(Map<String, Variant<?>> options)
            throws BluezNotSupportedException {
        throw new BluezNotSupportedException("no descriptors are passed");
    }

    @Override
    public TwoTuple<FileDescriptor, UInt16> AcquireNotify(Map<String, Variant<?>> options)
            throws BluezNotSupportedException {
        throw new BluezNotSupportedException("no descriptors are passed");
    }
}
