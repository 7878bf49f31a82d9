package settlemark.rig;

import java.util.Set;
import settlemark.rig.RigTruth.Stage;
import settlemark.session.DemoHands.Call;

/**
 * The simulated furnace on its gas supply, in fixed steps of time. Free of chance: the same hands at the same steps give
 * the same truth.
 */
final class Furnace {
    /** Area of orifices an eighth too large, against the right ones. */
    private static final double LARGE_ORIFICES = 1.125;

    private static final double SECONDS_PER_HOUR = 3600;
    /** A burner that draws less than this is out; what a valve lets by is less. */
    private static final double FLAME_FT3_PER_HOUR = 1;

    private final long stepNanos;
    private final double stepSeconds;
    private final double orifices;
    private final Appliance appliance;
    private final GasSupply supply;
    private final GasValve valve;
    private final FurnaceControl control;
    private final HeatPath heat;
    private long timeNanos;
    private Call call = Call.OFF;
    private boolean portsOpen;
    private boolean cockAsked;
    private double flowFt3PerHour;
    private double inletInH2o;
    private double meterCubicFeet;

    Furnace(long stepNanos) {
        this(stepNanos, Set.of());
    }

    Furnace(long stepNanos, Set<RigFault> faults) {
        this(stepNanos, faults, Appliance.TWO_STAGE);
    }

    Furnace(long stepNanos, Set<RigFault> faults, Appliance appliance) {
        if (stepNanos <= 0) {
            throw new IllegalArgumentException("a step is longer than 0 ns, got " + stepNanos);
        }
        this.stepNanos = stepNanos;
        stepSeconds = stepNanos / 1e9;
        orifices = faults.contains(RigFault.WRONG_ORIFICE) ? LARGE_ORIFICES : 1;
        this.appliance = appliance;
        supply = new GasSupply(faults, appliance);
        valve = new GasValve(faults, appliance.stages());
        control = new FurnaceControl(faults);
        heat = new HeatPath(faults);
        inletInH2o = supply.inletInH2o(0);
    }

    long timeNanos() {
        return timeNanos;
    }

    long stepNanos() {
        return stepNanos;
    }

    void step() {
        control.step(call, stepSeconds);
        supply.step(flowFt3PerHour + valve.letByFt3PerHour(inletInH2o), stepSeconds);
        valve.step(control.stage(), supply.inletInH2o(flowFt3PerHour), stepSeconds);
        flowFt3PerHour = orifices * appliance.flowFt3PerHour(valve.manifoldInH2o());
        if (cockAsked && (call != Call.OFF || flowFt3PerHour < FLAME_FT3_PER_HOUR)) {
            supply.cock(true);
        }
        inletInH2o = supply.inletInH2o(flowFt3PerHour);
        meterCubicFeet += (supply.cockShut() ? 0 : flowFt3PerHour) * stepSeconds / SECONDS_PER_HOUR
                + supply.otherFlowFt3PerHour() * stepSeconds / SECONDS_PER_HOUR;
        heat.step(
                appliance.heatBtuPerHour(flowFt3PerHour),
                control.blowerOn() ? appliance.blowerShare(control.stage()) : 0,
                stepSeconds);
        timeNanos += stepNanos;
    }

    void call(Call wanted) {
        call = wanted;
    }

    double meterCubicFeet() {
        return meterCubicFeet;
    }

    Call call() {
        return call;
    }

    /** The screws lie under the cap: with the cap on, nothing happens. */
    void turnScrew(Stage stage, double turns) {
        if (!valve.capOn()) {
            valve.screw(stage).turn(turns);
        }
    }

    void stand(Stage stage, double manifoldInH2o) {
        valve.stand(stage, manifoldInH2o);
    }

    double turns(Stage stage) {
        return valve.screw(stage).turns();
    }

    void cap(boolean on) {
        valve.cap(on);
    }

    void portsOpen(boolean open) {
        portsOpen = open;
    }

    /** Hands turn it once the burner that was called off is out: a flame would empty what is to be trapped. */
    void cock(boolean shut) {
        cockAsked = shut;
        if (!shut) {
            supply.cock(false);
        }
    }

    void otherLoad(boolean burning) {
        supply.otherLoad(burning);
    }

    RigTruth truth() {
        double gasHeat = appliance.heatBtuPerHour(flowFt3PerHour);
        return new RigTruth(
                timeNanos,
                inletInH2o,
                valve.manifoldInH2o(),
                heat.supplyDegF(),
                heat.returnDegF(),
                flowFt3PerHour,
                supply.otherFlowFt3PerHour(),
                gasHeat,
                heat.airHeatBtuPerHour(),
                heat.flueLossBtuPerHour(gasHeat),
                heat.storedBtu(),
                heat.airflowCfm(),
                heat.exchangerDegF(),
                heat.cabinetDegF(),
                control.stage(),
                valve.capOn(),
                portsOpen,
                supply.otherLoad());
    }
}
