package settlemark.rig;

/**
 * Friction drop of natural gas in low-pressure pipe: the equation D = Q^0.381 / (19.17 (dH / (Cr L))^0.206) of the US
 * fuel gas codes (IFGC/NFPA 54, below 1.5 psi), solved for dH. D inside diameter in inches, Q ft³/h, L ft, dH inH2O, Cr
 * 0.6094 for natural gas of specific gravity 0.60. The drop grows as Q to the power 1.85.
 */
final class PipeDrop {
    private static final double NATURAL_GAS_CR = 0.6094;
    private static final double EXPONENT = 0.381 / 0.206;

    private PipeDrop() {}

    /** Drop of this pipe at 1 ft³/h. */
    static double factor(double lengthFt, double insideDiameterInches) {
        return NATURAL_GAS_CR * lengthFt * StrictMath.pow(1 / (19.17 * insideDiameterInches), 1 / 0.206);
    }

    static double inH2o(double factor, double flowFt3PerHour) {
        return factor * StrictMath.pow(flowFt3PerHour, EXPONENT);
    }
}
