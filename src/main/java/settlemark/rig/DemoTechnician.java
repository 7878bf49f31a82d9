package settlemark.rig;

import settlemark.session.DemoHands;
import settlemark.session.DemoHands.Call;

/**
 * The scripted technician of the demo: does with their hands what the step at hand asks for, and says when it is done.
 * Sees what the gauge shows, never the truth. Give it a {@link Look} several times a second; it does not read a clock.
 *
 * <p>For one thread at a time.
 */
public final class DemoTechnician {
    private static final double SECOND_NANOS = 1e9;
    /** Hands are slower than buttons: nothing is reported sooner after it was done. */
    private static final double HANDS_SECONDS = 5;
    /** A report that had no effect is made again after this. */
    private static final double REPEAT_SECONDS = 15;
    /** The burner counts as being on a stage while the manifold is this near to its target, as a fraction. */
    private static final double ON_STAGE_FRACTION = 0.4;

    private final DemoHands hands;
    private final Eye eye = new Eye();
    private Task task = Task.REST;
    private String stage = "";
    private ScrewWork screwWork = new ScrewWork(eye);
    private MeterWork meterWork = new MeterWork();
    private long doneNanos;
    private long reportedNanos = Long.MIN_VALUE;

    /** What the step at hand needs of the hands. */
    public enum Task {
        /** Nothing: wait for a reading. */
        REST,
        /** Both ports open to air, nothing burning: for the zero, and again for the closing one. */
        OPEN_PORTS,
        /** Hoses on their taps, nothing burning: for lock-up. */
        LOCK_UP,
        /** The stage burning, cap on. */
        FIRE,
        /** The stage burning, its screw turned until the capped manifold will stand at the target; then the cap on. */
        ADJUST,
        /** The call for heat ended. */
        SHUT,
        /** The stage burning, and every other appliance on the supply. */
        FIRE_ALL,
        /** Nothing burning, the manual valve shut behind the inlet's tap. */
        TRAP,
        /** The stage burning alone, the meter's pointer watched for two turns at a time. */
        CLOCK
    }

    /** What the technician says after a look. */
    public enum Report {
        NOTHING,
        /** The task is done. */
        DONE,
        /** The screw does not answer; the manifold is left as it is. */
        SCREW_DEAD,
        /** The meter's pointer passes its mark. */
        MARK,
        /** Enough turns for this run. */
        END_RUN
    }

    /**
     * What the technician sees.
     *
     * @param timeNanos when
     * @param task what is to be done
     * @param stage {@code low} or {@code high}, empty where nothing burns
     * @param targetInH2o manifold pressure of the stage, NaN where nothing burns
     * @param manifoldInH2o what the gauge shows at the manifold, zero taken off; NaN where it shows nothing
     * @param manifoldSettled whether that reading has settled
     */
    public record Look(
            long timeNanos,
            Task task,
            String stage,
            double targetInH2o,
            double manifoldInH2o,
            boolean manifoldSettled) {}

    public DemoTechnician(DemoHands hands) {
        this.hands = hands;
    }

    /** Does the next thing; returns what there is to say. */
    public Report look(Look look) {
        eye.see(look.timeNanos(), look.manifoldInH2o());
        if (look.task() != task || !look.stage().equals(stage)) {
            begin(look);
        }
        Report report = switch (task) {
            case REST -> Report.NOTHING;
            case OPEN_PORTS, LOCK_UP, SHUT, TRAP -> Report.DONE;
            case FIRE, FIRE_ALL -> onStage(look) ? Report.DONE : Report.NOTHING;
            case ADJUST -> onStage(look) ? screwWork.next(look, hands) : Report.NOTHING;
            case CLOCK -> onStage(look) ? meterWork.next(look, hands) : Report.NOTHING;
        };
        if (task == Task.CLOCK) {
            return report;
        }
        return report == Report.NOTHING || !due(look.timeNanos()) ? Report.NOTHING : report;
    }

    private void begin(Look look) {
        task = look.task();
        stage = look.stage();
        doneNanos = look.timeNanos();
        reportedNanos = Long.MIN_VALUE;
        if (task != Task.REST) {
            hands.manualValve(task != Task.TRAP);
            hands.otherAppliance(task == Task.FIRE_ALL);
        }
        switch (task) {
            case REST -> {}
            case OPEN_PORTS -> {
                hands.call(Call.OFF);
                hands.portsOpen(true);
            }
            case LOCK_UP -> {
                hands.call(Call.OFF);
                hands.portsOpen(false);
            }
            case FIRE, FIRE_ALL -> fire();
            case CLOCK -> {
                fire();
                meterWork = new MeterWork();
            }
            case TRAP -> {
                hands.call(Call.OFF);
                hands.portsOpen(false);
            }
            case ADJUST -> {
                fire();
                screwWork = new ScrewWork(eye);
            }
            case SHUT -> hands.call(Call.OFF);
        }
    }

    private void fire() {
        hands.portsOpen(false);
        hands.cap(true);
        hands.call(
                switch (stage) {
                    case "high" -> Call.HIGH;
                    case "middle" -> Call.MIDDLE;
                    default -> Call.LOW;
                });
    }

    private boolean onStage(Look look) {
        boolean near = Math.abs(look.manifoldInH2o() - look.targetInH2o()) < ON_STAGE_FRACTION * look.targetInH2o();
        if (!near) {
            doneNanos = look.timeNanos();
        }
        return near;
    }

    private boolean due(long timeNanos) {
        boolean due = timeNanos - doneNanos >= HANDS_SECONDS * SECOND_NANOS
                && (reportedNanos == Long.MIN_VALUE || timeNanos - reportedNanos >= REPEAT_SECONDS * SECOND_NANOS);
        if (due) {
            reportedNanos = timeNanos;
        }
        return due;
    }
}
