package settlemark.link;

import java.util.Map;
import java.util.UUID;
import org.bluez.GattDescriptor1;
import org.bluez.exceptions.BluezNotPermittedException;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.types.Variant;

/** A descriptor of a characteristic of our own, with a value that can be read. */
final class BleServedNote extends BleServedObject implements GattDescriptor1 {
    private volatile byte[] value = new byte[0];

    BleServedNote(String path, String characteristicPath, UUID uuid) {
        super(path, Bluez.DESCRIPTOR);
        set("UUID", new Variant<>(uuid.toString()));
        set("Characteristic", new Variant<>(new DBusPath(characteristicPath)));
        set("Flags", new Variant<>(new String[] {"read"}));
    }

    void hold(byte[] bytes) {
        value = bytes.clone();
    }

    @Override
    public byte[] ReadValue(Map<String, Variant<?>> options) {
        return BleServedValue.rest(value, options);
    }

    @Override
    public void WriteValue(byte[] bytes, Map<String, Variant<?>> options) throws BluezNotPermittedException {
        throw new BluezNotPermittedException("only read");
    }
}
