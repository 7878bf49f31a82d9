package settlemark.link;

import java.util.Locale;

/** Names of the Bluetooth service on the bus, as its D-Bus interface gives them. */
final class Bluez {
    static final String SERVICE = "org.bluez";
    static final String ADAPTER = "org.bluez.Adapter1";
    static final String DEVICE = "org.bluez.Device1";
    static final String GATT_SERVICE = "org.bluez.GattService1";
    static final String CHARACTERISTIC = "org.bluez.GattCharacteristic1";
    static final String DESCRIPTOR = "org.bluez.GattDescriptor1";
    static final String BATTERY = "org.bluez.Battery1";
    static final String PROPERTIES = "org.freedesktop.DBus.Properties";
    static final String OBJECTS = "org.freedesktop.DBus.ObjectManager";

    private Bluez() {}

    /** @param address such as {@code 54:48:E6:8F:80:A5} */
    static String devicePath(String adapter, String address) {
        return adapter + "/dev_" + address.toUpperCase(Locale.ROOT).replace(':', '_');
    }

    /** @param below path of an object of a device, such as a characteristic */
    static String deviceOf(String below) {
        int device = below.indexOf("/dev_");
        int end = device < 0 ? -1 : below.indexOf('/', device + 1);
        return end < 0 ? below : below.substring(0, end);
    }

    static String adapterOf(String devicePath) {
        int slash = devicePath.lastIndexOf('/');
        return slash <= 0 ? devicePath : devicePath.substring(0, slash);
    }
}
