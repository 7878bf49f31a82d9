package settlemark.rig;

import java.util.Set;
import settlemark.rig.RigTruth.Stage;

/**
 * The appliance's two-stage gas valve with its pressure regulator. The regulator follows its spring (one screw a stage)
 * as a second-order system, passes on a fiftieth of the inlet's changes, creeps up while the body warms, and stands a
 * little higher with its cap on. Half-way between the screws the burner takes half-way between their rates. Where the inlet cannot give that much, the valve is wide open and the manifold follows
 * the inlet. Pressures in inches of water.
 */
final class GasValve {
    private static final double FREQUENCY_RAD_PER_SECOND = 3;
    private static final double DAMPING = 0.5;
    private static final double CAP_SHIFT_IN_H2O = 0.03;
    private static final double LARGE_CAP_SHIFT_IN_H2O = 0.35;
    /** What a shut valve with dirt on its seat lets by at 7 inH2O, ft³/h. */
    private static final double LET_BY_FT3_PER_HOUR = 0.01;

    private static final double CREEP_IN_H2O = 0.03;
    private static final double LARGE_CREEP_IN_H2O = 0.2;
    private static final double CREEP_TAU_SECONDS = 300;
    private static final double INLET_FOLLOWING = 0.02;
    private static final double REFERENCE_INLET_IN_H2O = 7;
    private static final double OPENING_TAU_SECONDS = 0.5;
    private static final double CLOSING_TAU_SECONDS = 0.15;
    /** A seat this near to closed is closed: it does not let by. */
    private static final double SHUT = 1e-4;

    private final Screw low = new Screw();
    private final Screw high = new Screw();
    private final SecondOrder regulatorInH2o;
    private final Appliance.Stages stages;
    private final Lag warmth = new Lag(0);
    private final Lag opening = new Lag(0);
    private final double capShiftInH2o;
    private final double creepInH2o;
    private final boolean letsBy;
    private boolean capOn = true;
    private double manifoldInH2o;

    GasValve(Set<RigFault> faults, Appliance.Stages stages) {
        this.stages = stages;
        regulatorInH2o = new SecondOrder(FREQUENCY_RAD_PER_SECOND, DAMPING, stages.lowInH2o());
        capShiftInH2o = faults.contains(RigFault.CAP_SHIFT) ? LARGE_CAP_SHIFT_IN_H2O : CAP_SHIFT_IN_H2O;
        creepInH2o = faults.contains(RigFault.VALVE_CREEP) ? LARGE_CREEP_IN_H2O : CREEP_IN_H2O;
        letsBy = faults.contains(RigFault.LETTING_BY);
    }

    /** What passes the seat while the valve is shut, ft³/h. */
    double letByFt3PerHour(double inletInH2o) {
        return letsBy && manifoldInH2o == 0 ? LET_BY_FT3_PER_HOUR * Math.sqrt(inletInH2o / REFERENCE_INLET_IN_H2O) : 0;
    }

    Screw screw(Stage stage) {
        return stage == Stage.HIGH ? high : low;
    }

    /** The screw stands where the manifold is so at a stage, cap on. */
    void stand(Stage stage, double inH2o) {
        boolean atHigh = stage == Stage.HIGH;
        double found = atHigh ? stages.highInH2o() : stages.lowInH2o();
        screw(stage).stand((inH2o - found) / (atHigh ? stages.highPerTurn() : stages.lowPerTurn()));
    }

    void cap(boolean on) {
        capOn = on;
    }

    boolean capOn() {
        return capOn;
    }

    double manifoldInH2o() {
        return manifoldInH2o;
    }

    void step(Stage stage, double inletInH2o, double stepSeconds) {
        low.step(stepSeconds);
        high.step(stepSeconds);
        boolean open = stage != Stage.OFF;
        regulatorInH2o.step(springInH2o(stage), stepSeconds);
        warmth.step(open ? 1 : 0, stepSeconds, CREEP_TAU_SECONDS);
        opening.step(open ? 1 : 0, stepSeconds, open ? OPENING_TAU_SECONDS : CLOSING_TAU_SECONDS);
        manifoldInH2o = opening.value() < SHUT ? 0 : opening.value() * openManifoldInH2o(inletInH2o);
    }

    private double openManifoldInH2o(double inletInH2o) {
        double regulated = regulatorInH2o.value()
                + INLET_FOLLOWING * (inletInH2o - REFERENCE_INLET_IN_H2O)
                + creepInH2o * warmth.value();
        return Math.max(0, Math.min(regulated, inletInH2o / (1 + stages.wideOpenLoss())));
    }

    private double springInH2o(Stage stage) {
        double lowest = stages.lowInH2o() + stages.lowPerTurn() * low.turns();
        double highest = stages.highInH2o() + stages.highPerTurn() * high.turns();
        double spring = switch (stage) {
            case HIGH -> highest;
            case MIDDLE -> square((Math.sqrt(lowest) + Math.sqrt(highest)) / 2);
            case OFF, LOW -> lowest;
        };
        return capOn ? spring : spring - capShiftInH2o;
    }

    private static double square(double x) {
        return x * x;
    }
}
