package settlemark.link;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.UUID;
import settlemark.profile.ByteText;
import settlemark.profile.Sighting;
import settlemark.session.Reception;

/**
 * A Bluetooth device that has been heard or is connected.
 *
 * @param address such as {@code 54:48:E6:8F:80:A5}
 * @param name as it advertises it, may be empty
 * @param services that it advertises, as services or as service data
 * @param serviceData that it last advertised, by service
 * @param companyData that it last advertised, by company
 * @param rssiDbm signal strength where it was told within the last ten seconds
 * @param ageSeconds since it was last heard, NaN where it was not
 * @param connected to this computer
 * @param bonded with this computer
 * @param batteryPercent as the Bluetooth service knows it, NaN where it does not
 */
public record BleSeen(
        String address,
        String name,
        List<UUID> services,
        Map<UUID, ByteText> serviceData,
        Map<Integer, ByteText> companyData,
        OptionalInt rssiDbm,
        double ageSeconds,
        boolean connected,
        boolean bonded,
        double batteryPercent) {
    public BleSeen {
        services = List.copyOf(services);
        serviceData = Map.copyOf(serviceData);
        companyData = Map.copyOf(companyData);
    }

    /** Identifiers of its manufacturer-specific data. */
    public List<Integer> companies() {
        return companyData.keySet().stream().sorted().toList();
    }

    Reception reception() {
        return new Reception(rssiDbm, ageSeconds, connected, bonded, batteryPercent, serviceData, companyData);
    }

    /** What a profile may recognise it by. */
    public Sighting sighting() {
        return new Sighting.Radio(name, services, companies());
    }

    /** In words, such as {@code Probe 1, services 181A, -60 dBm}. */
    public String words() {
        StringBuilder words = new StringBuilder(name.isEmpty() ? "(no name)" : name);
        if (!services.isEmpty()) {
            words.append(", services ").append(String.join(" ", BleWords.uuids(services)));
        }
        companies().forEach(c -> words.append(String.format(Locale.ROOT, ", company %04X", c)));
        rssiDbm.ifPresent(dbm -> words.append(", ").append(dbm).append(" dBm"));
        if (connected) {
            words.append(", connected");
        } else if (ageSeconds >= 1) {
            words.append(String.format(Locale.ROOT, ", heard %.0f s ago", ageSeconds));
        }
        return bonded ? words.append(", paired").toString() : words.toString();
    }
}
