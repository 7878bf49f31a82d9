package settlemark.rig;

import java.util.Set;

/**
 * From the flame into the air: the heat exchanger (70 s at full airflow) warms the air, the cabinet and plenum (230 s,
 * a fifth of the way) take some of it and give it back, and the house warms slowly around the return. Every exchange
 * leaves one store and enters another, so the balance closes; Heun's method, second order in the step. Temperatures in
 * degrees Fahrenheit, heat in Btu (IT), airflow in ft³/min at standard density (1.08 Btu/h for each ft³/min and °F).
 */
final class HeatPath {
    private static final double FULL_AIRFLOW_CFM = 1185;
    /** Free convection while the blower stands. */
    private static final double IDLE_AIRFLOW_CFM = 20;

    private static final double LOW_TAP_SHARE = 0.62;
    private static final double BLOWER_TAU_SECONDS = 3;
    private static final double AIR_BTU_PER_HOUR_CFM_DEG_F = 1.08;
    private static final double EFFICIENCY = 0.80;
    private static final double EFFICIENCY_LOSS_WITHOUT_AIR = 0.06;
    private static final double EXCHANGER_BTU_PER_DEG_F = 5.4;
    private static final double EXCHANGER_EFFECTIVENESS = 0.217;
    private static final double CABINET_SHARE = 0.20;
    /** In series with the exchanger; delays the supply air on average as 300 s beside it would. */
    private static final double CABINET_TAU_HOURS = 230.0 / 3600;

    private static final double CABINET_BTU_PER_DEG_F =
            CABINET_TAU_HOURS * AIR_BTU_PER_HOUR_CFM_DEG_F * FULL_AIRFLOW_CFM * CABINET_SHARE;
    private static final double HOUSE_BTU_PER_DEG_F = 24_000;
    private static final double HOUSE_LOSS_BTU_PER_HOUR_DEG_F = 400;
    private static final double OUTDOOR_DEG_F = 20;
    private static final double START_DEG_F = 68;
    private static final double SECONDS_PER_HOUR = 3600;

    private final Lag airflowCfm = new Lag(IDLE_AIRFLOW_CFM);
    private final double blowerCfm;
    private double exchangerDegF = START_DEG_F;
    private double cabinetDegF = START_DEG_F;
    private double houseDegF = START_DEG_F;

    HeatPath(Set<RigFault> faults) {
        blowerCfm = faults.contains(RigFault.SLOW_BLOWER) ? LOW_TAP_SHARE * FULL_AIRFLOW_CFM : FULL_AIRFLOW_CFM;
    }

    double airflowCfm() {
        return airflowCfm.value();
    }

    double exchangerDegF() {
        return exchangerDegF;
    }

    double cabinetDegF() {
        return cabinetDegF;
    }

    double returnDegF() {
        return houseDegF;
    }

    double supplyDegF() {
        double leaving = leavingExchangerDegF(exchangerDegF, houseDegF, effectiveness());
        return leaving - CABINET_SHARE * (leaving - cabinetDegF);
    }

    double airHeatBtuPerHour() {
        return airConductance() * (supplyDegF() - houseDegF);
    }

    double flueLossBtuPerHour(double gasHeatBtuPerHour) {
        return gasHeatBtuPerHour * (1 - efficiency());
    }

    double storedBtu() {
        return EXCHANGER_BTU_PER_DEG_F * exchangerDegF + CABINET_BTU_PER_DEG_F * cabinetDegF;
    }

    /** @param blower share of its full airflow, 0 while it stands */
    void step(double gasHeatBtuPerHour, double blower, double stepSeconds) {
        airflowCfm.step(blower > 0 ? blower * blowerCfm : IDLE_AIRFLOW_CFM, stepSeconds, BLOWER_TAU_SECONDS);
        double effectiveness = effectiveness();
        double usefulBtuPerHour = gasHeatBtuPerHour * efficiency();
        double hours = stepSeconds / SECONDS_PER_HOUR;
        Slope first = slope(exchangerDegF, cabinetDegF, houseDegF, usefulBtuPerHour, effectiveness);
        Slope second = slope(
                exchangerDegF + hours * first.exchanger,
                cabinetDegF + hours * first.cabinet,
                houseDegF + hours * first.house,
                usefulBtuPerHour,
                effectiveness);
        exchangerDegF += hours * (first.exchanger + second.exchanger) / 2;
        cabinetDegF += hours * (first.cabinet + second.cabinet) / 2;
        houseDegF += hours * (first.house + second.house) / 2;
    }

    /** Temperature changes in °F an hour. */
    private record Slope(double exchanger, double cabinet, double house) {}

    private Slope slope(double exchanger, double cabinet, double house, double usefulBtuPerHour, double effectiveness) {
        double conductance = airConductance();
        double leaving = leavingExchangerDegF(exchanger, house, effectiveness);
        double intoAir = conductance * (leaving - house);
        double intoCabinet = conductance * CABINET_SHARE * (leaving - cabinet);
        double intoHouse = intoAir - intoCabinet - HOUSE_LOSS_BTU_PER_HOUR_DEG_F * (house - OUTDOOR_DEG_F);
        return new Slope(
                (usefulBtuPerHour - intoAir) / EXCHANGER_BTU_PER_DEG_F,
                intoCabinet / CABINET_BTU_PER_DEG_F,
                intoHouse / HOUSE_BTU_PER_DEG_F);
    }

    private static double leavingExchangerDegF(double exchanger, double entering, double effectiveness) {
        return entering + effectiveness * (exchanger - entering);
    }

    /** Btu/h for each °F of the whole airflow. */
    private double airConductance() {
        return AIR_BTU_PER_HOUR_CFM_DEG_F * airflowCfm.value();
    }

    /** Slower air takes up more of the difference, as heat transfer in turbulent flow goes. */
    private double effectiveness() {
        double transferUnits = StrictMath.pow(airflowCfm.value() / FULL_AIRFLOW_CFM, -0.2);
        return 1 - StrictMath.pow(1 - EXCHANGER_EFFECTIVENESS, transferUnits);
    }

    private double efficiency() {
        return EFFICIENCY - EFFICIENCY_LOSS_WITHOUT_AIR * (1 - airflowCfm.value() / FULL_AIRFLOW_CFM);
    }
}
