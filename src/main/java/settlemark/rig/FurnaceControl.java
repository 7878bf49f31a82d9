package settlemark.rig;

import java.util.Set;
import settlemark.rig.RigTruth.Stage;
import settlemark.session.DemoHands.Call;

/**
 * The furnace's control board: pre-purge, light on low fire, go to high fire where that is called, blower on some time
 * after the light and off some time after the flame.
 */
final class FurnaceControl {
    private static final double PRE_PURGE_SECONDS = 15;
    private static final double LIGHT_ON_LOW_SECONDS = 20;
    private static final double BLOWER_ON_DELAY_SECONDS = 30;
    private static final double BLOWER_OFF_DELAY_SECONDS = 120;

    private final boolean neverHigh;
    private double purgedSeconds;
    private double burningSeconds;
    private double outSeconds;
    private Stage stage = Stage.OFF;
    private boolean blowerOn;

    FurnaceControl(Set<RigFault> faults) {
        neverHigh = faults.contains(RigFault.STAGE_MISSING);
    }

    Stage stage() {
        return stage;
    }

    boolean blowerOn() {
        return blowerOn;
    }

    void step(Call call, double stepSeconds) {
        stage = next(call, stepSeconds);
        if (stage == Stage.OFF) {
            burningSeconds = 0;
            outSeconds += stepSeconds;
            blowerOn = blowerOn && outSeconds < BLOWER_OFF_DELAY_SECONDS;
        } else {
            burningSeconds += stepSeconds;
            outSeconds = 0;
            blowerOn = blowerOn || burningSeconds >= BLOWER_ON_DELAY_SECONDS;
        }
    }

    private Stage next(Call call, double stepSeconds) {
        if (call == Call.OFF) {
            purgedSeconds = 0;
            return Stage.OFF;
        }
        purgedSeconds += stepSeconds;
        if (purgedSeconds < PRE_PURGE_SECONDS) {
            return Stage.OFF;
        }
        if (neverHigh || burningSeconds < LIGHT_ON_LOW_SECONDS) {
            return Stage.LOW;
        }
        return switch (call) {
            case OFF, LOW -> Stage.LOW;
            case MIDDLE -> Stage.MIDDLE;
            case HIGH -> Stage.HIGH;
        };
    }
}
