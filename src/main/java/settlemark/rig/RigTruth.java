package settlemark.rig;

/**
 * What is really so on the simulated appliance at one instant: the figures that no instrument knows. Pressures in inches
 * of water (conventional), gauge; temperatures in degrees Fahrenheit; heat rates in Btu (IT) an hour.
 *
 * @param timeNanos rig time of this state
 * @param inletInH2o at the inlet tap of the appliance's valve
 * @param manifoldInH2o at the manifold tap
 * @param supplyDegF air in the supply duct where the probe sits
 * @param returnDegF air in the return duct where the probe sits
 * @param gasFlowFt3PerHour what the burner takes
 * @param otherFlowFt3PerHour what the other appliance takes
 * @param gasHeatBtuPerHour burner input, gross
 * @param airHeatBtuPerHour given to the air that leaves the plenum
 * @param flueLossBtuPerHour carried away by the flue gas
 * @param storedBtu heat in the exchanger and the cabinet above 0 °F
 * @param airflowCfm through the furnace, ft³/min at standard density
 * @param exchangerDegF heat exchanger
 * @param cabinetDegF cabinet and plenum
 * @param stage what burns
 * @param capOn regulator cap
 * @param portsOpen both ports of the gauge open to air
 * @param otherLoad the other appliance burns
 */
public record RigTruth(
        long timeNanos,
        double inletInH2o,
        double manifoldInH2o,
        double supplyDegF,
        double returnDegF,
        double gasFlowFt3PerHour,
        double otherFlowFt3PerHour,
        double gasHeatBtuPerHour,
        double airHeatBtuPerHour,
        double flueLossBtuPerHour,
        double storedBtu,
        double airflowCfm,
        double exchangerDegF,
        double cabinetDegF,
        Stage stage,
        boolean capOn,
        boolean portsOpen,
        boolean otherLoad) {

    /** What burns. */
    public enum Stage {
        OFF,
        LOW,
        /** Between the two, where the burner modulates. */
        MIDDLE,
        HIGH
    }

    /** Pressure at the gauge's first port: that of the inlet tap, or nothing while the ports are open. */
    public double inletAtGaugeInH2o() {
        return portsOpen ? 0 : inletInH2o;
    }

    /** Pressure at the gauge's second port: that of the manifold tap, or nothing while the ports are open. */
    public double manifoldAtGaugeInH2o() {
        return portsOpen ? 0 : manifoldInH2o;
    }

    public double riseDegF() {
        return supplyDegF - returnDegF;
    }
}
