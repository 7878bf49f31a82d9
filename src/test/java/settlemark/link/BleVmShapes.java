package settlemark.link;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.types.UInt16;
import org.freedesktop.dbus.types.Variant;
import settlemark.session.LinkException;

/** A device that advertises whatever an advertisement can carry: odd names, any identifiers, data of any length. */
final class BleVmShapes implements AutoCloseable {
    private static final String MANAGER = "org.bluez.LEAdvertisingManager1";
    private static final String[] NAMES = {
        "",
        " ",
        "\t\n\u0001",
        "Settle beacon",
        "\u00B5\u20AC\uD83D\uDE00",
        "\u202Egnitats",
        "%s%n{}",
        "x".repeat(20),
        "\"';--",
        "\uFFFD"
    };

    private final BleCentral central;
    private final BleServedAdvert advert;
    private String filled = "ServiceData";

    /** @param adapter name of the adapter that advertises */
    BleVmShapes(String bus, String adapter) throws LinkException {
        this.central = new BleCentral(bus, Fixtures.THREADS, BleSettings.USUAL);
        this.advert = new BleServedAdvert("/settlemark/advert", "Settle beacon", List.of());
        try {
            central.ready();
            central.export(advert.path(), advert);
            Map<String, Variant<?>> options = new HashMap<>();
            central.call(
                    "/org/bluez/" + adapter,
                    MANAGER,
                    "RegisterAdvertisement",
                    "oa{sv}",
                    new DBusPath(advert.path()),
                    options);
        } catch (BleFault | BluezError e) {
            throw new LinkException("no odd advertisements: " + e.getMessage(), e);
        }
    }

    /** Service data of the good kind, beside nothing else. */
    void good(byte[] data) {
        Map<String, Variant<?>> shape = new HashMap<>();
        shape.put("ServiceData", services(Map.of(BleVmProfiles.DATA, data)));
        tell(emptied(shape));
    }

    /** One of its shapes; data of the good kind's service too, with any content. */
    void odd(Random random) {
        Map<String, Variant<?>> shape = new HashMap<>();
        switch (random.nextInt(8)) {
            case 0 -> shape.put("ManufacturerData", companies(Map.of(random.nextInt(65536), bytes(random, 24))));
            case 1 ->
                shape.put(
                        "ManufacturerData",
                        companies(Map.of(random.nextInt(65535), bytes(random, 9), 0xFFFF, bytes(random, 9))));
            case 2 -> shape.put("ServiceData", services(Map.of(assigned(random), bytes(random, 24))));
            case 3 -> shape.put("ServiceData", services(Map.of(own(random), bytes(random, 10))));
            case 4 -> shape.put("ServiceData", services(Map.of(BleVmProfiles.DATA, bytes(random, 24))));
            case 5 -> shape.put("ServiceUUIDs", new Variant<>(new String[] {own(random), assigned(random)}));
            case 6 -> shape.put("LocalName", new Variant<>(NAMES[random.nextInt(NAMES.length)]));
            default -> shape.put("Appearance", new Variant<>(new UInt16(random.nextInt(65536))));
        }
        tell(emptied(shape));
    }

    /** What was filled before goes, or there would be no room. */
    private Map<String, Variant<?>> emptied(Map<String, Variant<?>> shape) {
        String next = shape.keySet().iterator().next();
        if (!filled.equals(next)) {
            switch (filled) {
                case "ManufacturerData" -> shape.put(filled, companies(Map.of()));
                case "ServiceData" -> shape.put(filled, services(Map.of()));
                case "ServiceUUIDs" -> shape.put(filled, new Variant<>(new String[0]));
                // Those stand beside the data and leave it its room.
                default -> {}
            }
        }
        filled = next;
        return shape;
    }

    private static byte[] bytes(Random random, int most) {
        byte[] bytes = new byte[random.nextInt(most)];
        random.nextBytes(bytes);
        return bytes;
    }

    private static String assigned(Random random) {
        return BleProfiles.uuid(String.format(java.util.Locale.ROOT, "%04X", random.nextInt(65536)));
    }

    private static String own(Random random) {
        return new UUID(random.nextLong(), random.nextLong()).toString();
    }

    private static Variant<?> services(Map<String, byte[]> data) {
        Map<String, Variant<?>> all = new HashMap<>();
        data.forEach((uuid, bytes) -> all.put(uuid, new Variant<>(bytes)));
        return new Variant<>(all, "a{sv}");
    }

    private static Variant<?> companies(Map<Integer, byte[]> data) {
        Map<UInt16, Variant<?>> all = new HashMap<>();
        data.forEach((company, bytes) -> all.put(new UInt16(company), new Variant<>(bytes)));
        return new Variant<>(all, "a{qv}");
    }

    private void tell(Map<String, Variant<?>> shape) {
        try {
            central.tell(advert.path(), BleServedAdvert.TYPE, shape);
        } catch (BluezError e) {
            throw new IllegalStateException("the bus took no advertisement", e);
        }
    }

    @Override
    public void close() {
        central.close();
    }
}
