package settlemark.rig;

import java.util.Set;

/**
 * The house's gas supply up to the appliance's inlet tap: service regulator, meter, trunk pipe, appliance cock. The
 * regulator follows its load as a first-order lag and droops in proportion to it; with nothing flowing it shuts and its
 * outlet rises slowly to the lock-up pressure. With the cock shut, what is trapped behind it empties into the valve. Pressures in inches of water, flows in ft³/h.
 */
final class GasSupply {
    private static final double DROOP_IN_H2O_PER_FT3_PER_HOUR = 0.4 / 200;
    private static final double RUNNING_TAU_SECONDS = 0.4;
    private static final double LOCK_UP_TAU_SECONDS = 3;
    /** Below this the regulator's seat is closed. */
    private static final double CLOSED_FT3_PER_HOUR = 0.5;

    private static final double METER_DROP_IN_H2O = 0.5;
    private static final double METER_FLOW_FT3_PER_HOUR = 250;
    private static final double COCK_DROP_IN_H2O = 0.05;
    private static final double COCK_FLOW_FT3_PER_HOUR = 77.7;
    private static final double OTHER_LOAD_TAU_SECONDS = 0.5;
    /** 40 ft of 3/4 in steel pipe. */
    private static final double TRUNK_FACTOR = PipeDrop.factor(40, 0.824);
    /** 120 ft of 1/2 in steel pipe. */
    private static final double NARROW_FACTOR = PipeDrop.factor(120, 0.622);

    private static final double CREEP_IN_H2O_PER_SECOND = 0.006;
    private static final double MOST_CREEP_IN_H2O = 6;
    /** Pipe between the appliance's cock and its valve. */
    private static final double TRAPPED_FT3 = 0.1;

    private static final double ATMOSPHERE_IN_H2O = 406.8;
    private static final double SECONDS_PER_HOUR = 3600;

    private final Lag regulatorInH2o;
    private final Appliance appliance;
    private final Lag otherFlow = new Lag(0);
    private final boolean creeps;
    private final double trunkFactor;
    private boolean otherLoad;
    private boolean cockShut;
    private double trappedInH2o;
    private double creptInH2o;

    GasSupply(Set<RigFault> faults, Appliance appliance) {
        this.appliance = appliance;
        regulatorInH2o = new Lag(appliance.lockUpInH2o());
        creeps = faults.contains(RigFault.REGULATOR_CREEP);
        trunkFactor =
                appliance.pipeFriction() * (faults.contains(RigFault.UNDERSIZED_PIPE) ? NARROW_FACTOR : TRUNK_FACTOR);
    }

    /** Shuts the appliance's cock and traps what stands behind it, or opens it. */
    void cock(boolean shut) {
        if (shut && !cockShut) {
            trappedInH2o = inletInH2o(0);
        }
        cockShut = shut;
    }

    boolean cockShut() {
        return cockShut;
    }

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
        otherFlow.step(otherLoad ? appliance.otherLoadFt3PerHour() : 0, stepSeconds, OTHER_LOAD_TAU_SECONDS);
        if (cockShut) {
            double fall = ATMOSPHERE_IN_H2O * applianceFt3PerHour / TRAPPED_FT3 / SECONDS_PER_HOUR;
            trappedInH2o = Math.max(0, trappedInH2o - fall * stepSeconds);
        }
        double total = (cockShut ? 0 : applianceFt3PerHour) + otherFlow.value();
        if (total < CLOSED_FT3_PER_HOUR) {
            creptInH2o = creeps ? Math.min(MOST_CREEP_IN_H2O, creptInH2o + CREEP_IN_H2O_PER_SECOND * stepSeconds) : 0;
            regulatorInH2o.step(appliance.lockUpInH2o() + creptInH2o, stepSeconds, LOCK_UP_TAU_SECONDS);
        } else {
            creptInH2o = 0;
            regulatorInH2o.step(
                    appliance.setInH2o() - DROOP_IN_H2O_PER_FT3_PER_HOUR * total, stepSeconds, RUNNING_TAU_SECONDS);
        }
    }

    /** Pressure at the appliance's inlet tap while it takes this much. */
    double inletInH2o(double applianceFt3PerHour) {
        if (cockShut) {
            return trappedInH2o;
        }
        double total = applianceFt3PerHour + otherFlow.value();
        double meter = METER_DROP_IN_H2O * square(total / METER_FLOW_FT3_PER_HOUR);
        double cock = COCK_DROP_IN_H2O * square(applianceFt3PerHour / COCK_FLOW_FT3_PER_HOUR);
        return Math.max(0, regulatorInH2o.value() - meter - PipeDrop.inH2o(trunkFactor, total) - cock);
    }

    private static double square(double x) {
        return x * x;
    }
}
