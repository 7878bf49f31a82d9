package settlemark.ui;

import java.util.Locale;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.session.DemoHands;
import settlemark.session.DemoHands.Call;

/** With the demo's hands, the press that says "I did it" also does it to the simulated appliance. */
final class DemoActs {
    static final double SMALL_TURN = 1 / 20.0;
    static final double LARGE_TURN = 1 / 4.0;

    private DemoActs() {}

    /** The physical act that a press of this step's primary button reports. */
    static void pressed(DemoHands hands, StepState step) {
        switch (step.step().kind()) {
            case ZERO, CLOSE -> {
                hands.call(Call.OFF);
                hands.portsOpen(true);
            }
            case LOCK_UP -> {
                hands.manualValve(true);
                hands.call(Call.OFF);
                hands.portsOpen(false);
            }
            case FOUND -> {
                hands.portsOpen(false);
                hands.call(stage(step));
            }
            case LEFT -> hands.cap(true);
            case SHUT -> hands.call(Call.OFF);
            case THIS_APPLIANCE, ALL_APPLIANCES -> {
                hands.portsOpen(false);
                hands.manualValve(true);
                hands.otherAppliance(step.step().kind() == StepKind.ALL_APPLIANCES);
                hands.call(Call.HIGH);
            }
            case HOLD -> {
                hands.call(Call.OFF);
                hands.otherAppliance(false);
                hands.manualValve(false);
            }
            case CLOCK -> {
                hands.portsOpen(false);
                hands.manualValve(true);
                hands.otherAppliance(false);
                hands.call(stage(step));
            }
            case COMBUSTION -> {
                hands.portsOpen(false);
                hands.manualValve(true);
                hands.call(stage(step));
            }
            case STATICS -> {
                hands.portsOpen(false);
                hands.manualValve(true);
                hands.call(Call.HIGH);
            }
            case PLATE, PROBES, CHECK, RECORD -> {}
        }
    }

    /** A stage is to be adjusted: its call, and the cap off. */
    static void adjusting(DemoHands hands, StepState step) {
        hands.portsOpen(false);
        hands.call(stage(step));
        hands.cap(false);
    }

    static void turn(DemoHands hands, StepState step, double turns) {
        hands.turnScrew(step.step().stage(), turns);
    }

    private static Call stage(StepState step) {
        return switch (step.step().stage().toLowerCase(Locale.ROOT)) {
            case "low" -> Call.LOW;
            case "middle" -> Call.MIDDLE;
            default -> Call.HIGH;
        };
    }
}
