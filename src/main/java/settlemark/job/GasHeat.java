package settlemark.job;

/**
 * The heat in the gas that the meter measures.
 *
 * @param btuPerCubicFoot gross heating value as delivered at the meter, Btu (IT) in a cubic foot, 50 to 4000
 * @param relativeWidth half width of what it may be off by, as a fraction of itself, 0 to 0.2
 * @param source who says so, never empty
 */
public record GasHeat(double btuPerCubicFoot, double relativeWidth, String source) {
    public GasHeat {
        if (!(btuPerCubicFoot >= 50 && btuPerCubicFoot <= 4000)) {
            throw new IllegalArgumentException("a heating value lies between 50 and 4000 Btu/ft\u00B3, got "
                    + btuPerCubicFoot + "; ask the gas supplier");
        }
        if (!(relativeWidth >= 0 && relativeWidth <= 0.2)) {
            throw new IllegalArgumentException(
                    "a heating value is known to within 0 to 0.2 of itself, got " + relativeWidth);
        }
        if (source.isBlank()) {
            throw new IllegalArgumentException("a heating value says where it comes from");
        }
    }

    /** What the gas customarily holds where nobody has asked the supplier; common practice. */
    public static GasHeat customary(Fuel fuel) {
        return switch (fuel) {
            case NATURAL_GAS -> new GasHeat(1030, 0.01, "customary; the gas supplier's own figure wins");
            case PROPANE -> new GasHeat(2510, 0.01, "customary; the gas supplier's own figure wins");
        };
    }
}
