package settlemark.link;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.UUID;
import settlemark.profile.ByteText;

/** What one adapter sees, in the program's terms. */
final class BleSight {
    /** Older values say nothing about here and now. */
    private static final double LATELY_SECONDS = 10;

    private BleSight() {}

    /** Heard lately, connected or bonded; the strongest first. */
    static List<BleSeen> all(BleCentral central, String adapter) {
        List<BleSeen> all = new ArrayList<>();
        for (String path : central.objects().paths(Bluez.DEVICE, adapter)) {
            BleSeen seen = seen(central, path);
            if (seen.ageSeconds() <= LATELY_SECONDS || seen.connected() || seen.bonded()) {
                all.add(seen);
            }
        }
        all.sort(Comparator.comparingInt((BleSeen s) -> -s.rssiDbm().orElse(-200))
                .thenComparing(BleSeen::address));
        return all;
    }

    private static BleSeen seen(BleCentral central, String path) {
        BluezObjects objects = central.objects();
        BleHearing.Heard heard = central.hearing().of(path);
        long now = System.nanoTime();
        boolean fresh = heard != null && (now - heard.rssiNanos()) / 1e9 <= LATELY_SECONDS;
        return new BleSeen(
                BluezValues.text(objects.property(path, Bluez.DEVICE, "Address"))
                        .orElse(""),
                BluezValues.text(objects.property(path, Bluez.DEVICE, "Name")).orElse(""),
                services(objects, path),
                serviceData(objects, path),
                companyData(objects, path),
                heard != null && fresh ? heard.rssiDbm() : OptionalInt.empty(),
                heard == null ? Double.NaN : (now - heard.nanos()) / 1e9,
                BluezValues.isTrue(objects.property(path, Bluez.DEVICE, "Connected")),
                BluezValues.isTrue(objects.property(path, Bluez.DEVICE, "Bonded"))
                        || BluezValues.isTrue(objects.property(path, Bluez.DEVICE, "Paired")),
                BluezValues.number(objects.property(path, Bluez.BATTERY, "Percentage"))
                        .map(Integer::doubleValue)
                        .orElse(Double.NaN));
    }

    private static Map<UUID, ByteText> serviceData(BluezObjects objects, String path) {
        Map<UUID, ByteText> all = new HashMap<>();
        BluezValues.data(objects.property(path, Bluez.DEVICE, "ServiceData"))
                .forEach(
                        (key, bytes) -> BleGatt.parsed(key).ifPresent(service -> all.put(service, ByteText.of(bytes))));
        return all;
    }

    private static Map<Integer, ByteText> companyData(BluezObjects objects, String path) {
        Map<Integer, ByteText> all = new HashMap<>();
        BluezValues.data(objects.property(path, Bluez.DEVICE, "ManufacturerData"))
                .forEach((key, bytes) -> {
                    // Whatever else a key may be, it is no company.
                    if (key.matches("[0-9]{1,5}")) {
                        all.put(Integer.valueOf(key), ByteText.of(bytes));
                    }
                });
        return all;
    }

    private static List<UUID> services(BluezObjects objects, String path) {
        Set<String> texts = new LinkedHashSet<>(BluezValues.texts(objects.property(path, Bluez.DEVICE, "UUIDs")));
        texts.addAll(BluezValues.data(objects.property(path, Bluez.DEVICE, "ServiceData"))
                .keySet());
        return texts.stream().flatMap(t -> BleGatt.parsed(t).stream()).toList();
    }
}
