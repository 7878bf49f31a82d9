package settlemark.rig;

import settlemark.session.DemoHands.Analysis;

/**
 * What an analyser in the flue and a gauge on the air's two static ports show. The inducer moves about the same air at a
 * stage whatever the burner takes, so a burner that is fed too much runs short of it; the blower's pressures go as the
 * square of its air. The figures are invented for this furnace.
 */
final class FlueGas {
    /** Air over what natural gas needs when the furnace burns its rated rate. */
    private static final double EXCESS_AT_RATED = 0.45;

    /** Dry flue gas over air, by stoichiometry: methane, propane. */
    private static final double DRY_SHARE = 0.895;

    private static final double DRY_SHARE_PROPANE = 0.916;

    private static final double GOOD_PPM = 12;
    /** Excess air below which carbon monoxide climbs. */
    private static final double SHORT_OF_AIR = 0.30;

    private static final double CLIMB_PPM = 6000;
    private static final double ABOVE_EXCHANGER_DEG_F = 45;
    private static final double FULL_AIRFLOW_CFM = 1185;
    private static final double SUPPLY_IN_H2O = 0.22;
    private static final double RETURN_IN_H2O = 0.20;

    private FlueGas() {}

    static Analysis of(RigTruth truth, Appliance appliance) {
        double byRatedRate = truth.gasFlowFt3PerHour() / appliance.ratedFt3PerHour(truth.stage());
        double air = truth.airflowCfm() / FULL_AIRFLOW_CFM;
        double supply = SUPPLY_IN_H2O * air * air;
        double back = -RETURN_IN_H2O * air * air;
        if (truth.stage() == RigTruth.Stage.OFF) {
            return new Analysis(20.9, 0, truth.returnDegF(), supply, back);
        }
        double excess = Math.max(0.02, (1 + EXCESS_AT_RATED) / byRatedRate - 1);
        double share = appliance == Appliance.TWO_STAGE_PROPANE ? DRY_SHARE_PROPANE : DRY_SHARE;
        double oxygen = 21 * excess / (excess + share);
        double lack = Math.max(0, SHORT_OF_AIR - excess);
        return new Analysis(
                oxygen,
                GOOD_PPM + CLIMB_PPM * lack * lack,
                truth.exchangerDegF() + ABOVE_EXCHANGER_DEG_F,
                supply,
                back);
    }
}
