package settlemark.link;

import java.util.UUID;
import org.bluez.GattService1;
import org.freedesktop.dbus.types.Variant;

/** A service of our own. */
final class BleServedService extends BleServedObject implements GattService1 {
    BleServedService(String path, UUID uuid) {
        super(path, Bluez.GATT_SERVICE);
        set("UUID", new Variant<>(uuid.toString()));
        set("Primary", new Variant<>(true));
    }
}
