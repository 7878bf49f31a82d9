package settlemark.rig;

/**
 * Which simulated furnace stands on the rig. All are invented; each takes 80,000 Btu/h at its highest fire. The gas flows
 * as the square root of the manifold pressure (Bernoulli).
 */
public enum Appliance {
    /** Two stages, natural gas of 1030 Btu/ft³ gross: 1.7 and 3.5 inH2O. */
    TWO_STAGE(41.5, 1030, 7.2, 7.8, new Stages(1.47, 3.07, 0.35, 0.5, 0.214), new Blower(1, 1)),
    /** The same, as a good visit left it. */
    TWO_STAGE_SET(41.5, 1030, 7.2, 7.8, new Stages(1.7, 3.5, 0.35, 0.5, 0.214), new Blower(1, 1)),
    /** Lowest, middle and highest fire on natural gas, the blower with them: 0.56, 1.7 and 3.5 inH2O. */
    MODULATING(41.5, 1030, 7.2, 7.8, new Stages(0.46, 3.07, 0.2, 0.5, 0.214), new Blower(0.5, 0.75)),
    /** Two stages, propane of 2510 Btu/ft³ gross: 4.9 and 10 inH2O. */
    TWO_STAGE_PROPANE(10.08, 2510, 11.6, 12.3, new Stages(4.3, 8.9, 1.0, 1.4, 0.032), new Blower(1, 1));

    private static final double OTHER_LOAD_BTU_PER_HOUR = 40_000;

    private final double ft3PerHourAt1InH2o;
    private final double heatingValueBtuPerFt3;
    private final double setInH2o;
    private final double lockUpInH2o;
    private final Stages stages;
    private final Blower blower;

    /**
     * The valve's two screws as they are found, cap on.
     *
     * @param lowInH2o manifold at the lowest fire
     * @param highInH2o manifold at the highest fire
     * @param lowPerTurn what a turn of the low screw does, inH2O
     * @param highPerTurn what a turn of the high screw does, inH2O
     * @param wideOpenLoss loss of the wide-open valve, as a part of the manifold pressure; it goes as the density times the
     *     square of the flow
     */
    record Stages(double lowInH2o, double highInH2o, double lowPerTurn, double highPerTurn, double wideOpenLoss) {}

    /** Share of the full airflow at the lower fires. */
    record Blower(double low, double middle) {}

    Appliance(
            double ft3PerHourAt1InH2o,
            double heatingValueBtuPerFt3,
            double setInH2o,
            double lockUpInH2o,
            Stages stages,
            Blower blower) {
        this.ft3PerHourAt1InH2o = ft3PerHourAt1InH2o;
        this.heatingValueBtuPerFt3 = heatingValueBtuPerFt3;
        this.setInH2o = setInH2o;
        this.lockUpInH2o = lockUpInH2o;
        this.stages = stages;
        this.blower = blower;
    }

    double flowFt3PerHour(double manifoldInH2o) {
        return ft3PerHourAt1InH2o * Math.sqrt(manifoldInH2o);
    }

    double heatBtuPerHour(double flowFt3PerHour) {
        return flowFt3PerHour * heatingValueBtuPerFt3;
    }

    double setInH2o() {
        return setInH2o;
    }

    double lockUpInH2o() {
        return lockUpInH2o;
    }

    Stages stages() {
        return stages;
    }

    /** What another appliance of 40,000 Btu/h takes. */
    double otherLoadFt3PerHour() {
        return this == TWO_STAGE_PROPANE ? OTHER_LOAD_BTU_PER_HOUR / heatingValueBtuPerFt3 : 38.8;
    }

    /** Friction over that of natural gas at the same flow: Cr 1.2462 for propane, 0.6094 for natural gas (IFGC). */
    double pipeFriction() {
        return this == TWO_STAGE_PROPANE ? 1.2462 / 0.6094 : 1;
    }

    double blowerShare(RigTruth.Stage stage) {
        return switch (stage) {
            case LOW -> blower.low();
            case MIDDLE -> blower.middle();
            case OFF, HIGH -> 1;
        };
    }

    /** What a healthy burner takes at a stage of its plate. */
    double ratedFt3PerHour(RigTruth.Stage stage) {
        double share = switch (stage) {
            case LOW -> this == MODULATING ? 0.4 : 0.7;
            case MIDDLE -> 0.7;
            case OFF, HIGH -> 1;
        };
        return share * 80_000 / heatingValueBtuPerFt3;
    }
}
