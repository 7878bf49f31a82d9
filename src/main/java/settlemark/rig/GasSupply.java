package settlemark.rig;

/**
 * The house's gas supply up to the appliance's inlet tap: service regulator, meter, trunk pipe, appliance cock. The
 * regulator follows its load as a first-order lag and droops in proportion to it; with nothing flowing it shuts and its
 * outlet rises slowly to the lock-up pressure. Pressures in inches of water, flows in ft³/h.
 */
final class GasSupply {
    private static final double SET_IN_H2O = 7.2;
    private static final double DROOP_IN_H2O_PER_FT3_PER_HOUR = 0.4 / 200;
    private static final double LOCK_UP_IN_H2O = 7.8;
    private static final double RUNNING_TAU_SECONDS = 0.4;
    private static final double LOCK_UP_TAU_SECONDS = 3;
    /** Below this the regulator's seat is closed. */
    private static final double CLOSED_FT3_PER_HOUR = 0.5;

    private static final double METER_DROP_IN_H2O = 0.5;
    private static final double METER_FLOW_FT3_PER_HOUR = 250;
    private static final double COCK_DROP_IN_H2O = 0.05;
    private static final double COCK_FLOW_FT3_PER_HOUR = 77.7;
    /** 40 kBtu/h at 1030 Btu/ft³. */
    private static final double OTHER_LOAD_FT3_PER_HOUR = 38.8;

    private static final double OTHER_LOAD_TAU_SECONDS = 0.5;
    /** 40 ft of 3/4 in steel pipe. */
    private static final double TRUNK_FACTOR = PipeDrop.factor(40, 0.824);

    private final Lag regulatorInH2o = new Lag(LOCK_UP_IN_H2O);
    private final Lag otherFlow = new Lag(0);
    private boolean otherLoad;

    void otherLoad(boolean burning) {
        otherLoad = burning;
    }

    boolean otherLoad() {
        return otherLoad;
    }

    double otherFlowFt3PerHour() {
        return otherFlow.value();
    }

    void step(double applianceFt3PerHour, double stepSeconds) {
        otherFlow.step(otherLoad ? OTHER_LOAD_FT3_PER_HOUR : 0, stepSeconds, OTHER_LOAD_TAU_SECONDS);
        double total = applianceFt3PerHour + otherFlow.value();
        if (total < CLOSED_FT3_PER_HOUR) {
            regulatorInH2o.step(LOCK_UP_IN_H2O, stepSeconds, LOCK_UP_TAU_SECONDS);
        } else {
            regulatorInH2o.step(SET_IN_H2O - DROOP_IN_H2O_PER_FT3_PER_HOUR * total, stepSeconds, RUNNING_TAU_SECONDS);
        }
    }

    /** Pressure at the appliance's inlet tap while it takes this much. */
    double inletInH2o(double applianceFt3PerHour) {
        double total = applianceFt3PerHour + otherFlow.value();
        double meter = METER_DROP_IN_H2O * square(total / METER_FLOW_FT3_PER_HOUR);
        double cock = COCK_DROP_IN_H2O * square(applianceFt3PerHour / COCK_FLOW_FT3_PER_HOUR);
        return Math.max(0, regulatorInH2o.value() - meter - PipeDrop.inH2o(TRUNK_FACTOR, total) - cock);
    }

    private static double square(double x) {
        return x * x;
    }
}
