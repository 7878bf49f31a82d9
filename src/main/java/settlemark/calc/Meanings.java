package settlemark.calc;

import java.util.Locale;

/** What a disagreeing look usually means. Common practice, without a source. */
final class Meanings {
    private Meanings() {}

    static String of(Reconciliation.Look look, double ratio) {
        String by = String.format(Locale.ROOT, "%+.1f %%", (ratio - 1) * 100);
        return switch (look) {
            case ORIFICE -> "manifold pressure and orifice speak for " + by + " against the others: " + orifice(ratio);
            case METER -> "the meter says " + by + " against the others: " + meter(ratio);
            case HEATING_VALUE -> "the heating value is " + by + " against the others: " + heatingValue(ratio);
            case AIR ->
                "rise and airflow speak for " + by + " against the others: another blower tap than thought, a"
                        + " duct leak between the probes, or the efficiency";
        };
    }

    private static String orifice(double ratio) {
        return ratio > 1
                ? "the orifices are smaller than thought or partly blocked, or the relative density is higher"
                : "the orifices are larger than thought or drilled out, or the relative density is lower";
    }

    private static String meter(double ratio) {
        if (isNear(ratio, 2) || isNear(ratio, 0.5) || isNear(ratio, 4) || isNear(ratio, 0.25)) {
            return "another dial than thought was clocked, or half turns were counted";
        }
        return ratio > 1
                ? "another load or a pilot was on while it was clocked, or its volume was corrected twice"
                : "turns were missed, or its volume was not corrected to the basis of the heating value";
    }

    private static String heatingValue(double ratio) {
        if (isNear(ratio, 1.11) || isNear(ratio, 1 / 1.11)) {
            return "gross and net are mixed up";
        }
        return "its basis differs from that of the flow (as delivered or standard, saturated or dry)";
    }

    private static boolean isNear(double ratio, double figure) {
        return Math.abs(ratio / figure - 1) < 0.03;
    }
}
