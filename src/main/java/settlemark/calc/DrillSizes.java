package settlemark.calc;

import java.util.ArrayList;
import java.util.List;

/** Diameters of number drills 1 to 80 (ASME B94.11M), in inches. */
final class DrillSizes {
    static final double METRES_PER_INCH = 0.0254;

    private static final double[] INCHES = {
        0.2280, 0.2210, 0.2130, 0.2090, 0.2055, 0.2040, 0.2010, 0.1990, 0.1960, 0.1935, 0.1910, 0.1890, 0.1850, 0.1820,
        0.1800, 0.1770, 0.1730, 0.1695, 0.1660, 0.1610, 0.1590, 0.1570, 0.1540, 0.1520, 0.1495, 0.1470, 0.1440, 0.1405,
        0.1360, 0.1285, 0.1200, 0.1160, 0.1130, 0.1110, 0.1100, 0.1065, 0.1040, 0.1015, 0.0995, 0.0980, 0.0960, 0.0935,
        0.0890, 0.0860, 0.0820, 0.0810, 0.0785, 0.0760, 0.0730, 0.0700, 0.0670, 0.0635, 0.0595, 0.0550, 0.0520, 0.0465,
        0.0430, 0.0420, 0.0410, 0.0400, 0.0390, 0.0380, 0.0370, 0.0360, 0.0350, 0.0330, 0.0320, 0.0310, 0.0292, 0.0280,
        0.0260, 0.0250, 0.0240, 0.0225, 0.0210, 0.0200, 0.0180, 0.0160, 0.0145, 0.0135
    };

    private DrillSizes() {}

    /** The names, 1 to 80. */
    static List<String> names() {
        List<String> names = new ArrayList<>();
        for (int i = 1; i <= INCHES.length; i++) {
            names.add(String.valueOf(i));
        }
        return names;
    }

    /** Diameter in metres of drill 1 to 80. */
    static double metres(int drill) {
        return INCHES[drill - 1] * METRES_PER_INCH;
    }

    /** The drill whose diameter lies nearest; the smaller hole where two are equally near. */
    static int nearest(double metres) {
        int nearest = INCHES.length;
        for (int drill = INCHES.length; drill >= 1; drill--) {
            if (Math.abs(metres(drill) - metres) < Math.abs(metres(nearest) - metres) - 1e-12) {
                nearest = drill;
            }
        }
        return nearest;
    }
}
