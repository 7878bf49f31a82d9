package settlemark.decode;

import java.util.Map;
import java.util.Optional;
import settlemark.measure.Unit;

/**
 * Units by the numbers that Bluetooth descriptors name them with. Source: Bluetooth SIG, Assigned Numbers, section
 * "Units" (0x2700 to 0x27C8); those are here that a gauge may measure in.
 */
final class BluetoothUnits {
    private static final Map<Integer, String> CODES = Map.ofEntries(
            Map.entry(0x2700, "1"),
            Map.entry(0x2701, "m"),
            Map.entry(0x2702, "kg"),
            Map.entry(0x2703, "s"),
            Map.entry(0x2704, "A"),
            Map.entry(0x2705, "K"),
            Map.entry(0x2710, "m2"),
            Map.entry(0x2711, "m3"),
            Map.entry(0x2712, "m/s"),
            Map.entry(0x2722, "Hz"),
            Map.entry(0x2724, "Pa"),
            Map.entry(0x2725, "J"),
            Map.entry(0x2726, "W"),
            Map.entry(0x2728, "V"),
            Map.entry(0x272A, "Ohm"),
            Map.entry(0x272F, "Cel"),
            Map.entry(0x2767, "L"),
            Map.entry(0x2780, "bar"),
            Map.entry(0x2781, "mm[Hg]"),
            Map.entry(0x27A5, "[psi]"),
            Map.entry(0x27A6, "km/h"),
            Map.entry(0x27A7, "[mi_i]/h"),
            Map.entry(0x27AB, "kW.h"),
            Map.entry(0x27AC, "[degF]"),
            Map.entry(0x27AD, "%"),
            Map.entry(0x27C4, "[ppm]"));

    private BluetoothUnits() {}

    /** The unit of a 16-bit number, empty where it is none that is known here. */
    static Optional<Unit> find(int number) {
        return Optional.ofNullable(CODES.get(number)).flatMap(Unit::find);
    }
}
