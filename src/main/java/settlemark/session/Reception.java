package settlemark.session;

import java.util.Map;
import java.util.OptionalInt;
import java.util.UUID;
import settlemark.profile.ByteText;

/**
 * How a radio device is heard.
 *
 * @param signalDbm strength, empty where it was not told lately
 * @param ageSeconds since it was last heard, NaN where it was not
 * @param connected to this computer
 * @param paired with this computer
 * @param batteryPercent as the computer knows it, NaN where it does not
 * @param serviceData last advertised, by its service
 * @param companyData last advertised, by its company
 */
public record Reception(
        OptionalInt signalDbm,
        double ageSeconds,
        boolean connected,
        boolean paired,
        double batteryPercent,
        Map<UUID, ByteText> serviceData,
        Map<Integer, ByteText> companyData) {
    public Reception {
        serviceData = Map.copyOf(serviceData);
        companyData = Map.copyOf(companyData);
    }

    /** Of a device that is only known. */
    public static final Reception NONE =
            new Reception(OptionalInt.empty(), Double.NaN, false, false, Double.NaN, Map.of(), Map.of());

    /** Whether it is there now; one that is connected sends no advertisements. */
    public boolean inReach() {
        return connected || ageSeconds >= 0;
    }
}
