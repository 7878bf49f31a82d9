package settlemark.rig;

/**
 * Main burner orifices on natural gas of 1030 Btu/ft³ gross and specific gravity 0.60: flow grows as the square root of
 * the manifold pressure (Bernoulli).
 */
final class Burner {
    private static final double FT3_PER_HOUR_AT_1_IN_H2O = 41.5;
    private static final double HEATING_VALUE_BTU_PER_FT3 = 1030;

    private Burner() {}

    static double flowFt3PerHour(double manifoldInH2o) {
        return FT3_PER_HOUR_AT_1_IN_H2O * Math.sqrt(manifoldInH2o);
    }

    static double heatBtuPerHour(double flowFt3PerHour) {
        return flowFt3PerHour * HEATING_VALUE_BTU_PER_FT3;
    }
}
