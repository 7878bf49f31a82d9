package settlemark.ui;

import java.util.List;
import java.util.Optional;
import settlemark.job.JobState;
import settlemark.job.Progress;
import settlemark.job.StagePlate;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.session.ChannelView;
import settlemark.session.DemoHands;
import settlemark.session.Snapshot;

/**
 * All that one look at the window shows; immutable.
 *
 * @param snapshot of the session
 * @param job its job
 * @param open the step whose column is open
 * @param hands what the demo's hands did, empty with real probes
 * @param speed the demo's speed over real time, 1 for real time
 * @param axes of the rows
 * @param record how far the record has come
 */
record Scene(
        Snapshot snapshot,
        JobState job,
        StepState open,
        Optional<DemoHands.State> hands,
        int speed,
        Axes axes,
        RecordState record) {

    boolean simulated() {
        return snapshot.header().simulated();
    }

    /** True where the open column is the step at hand. */
    boolean live() {
        return job.currentStep().map(s -> s.key().equals(open.key())).orElse(false);
    }

    StepKind kind() {
        return open.step().kind();
    }

    boolean armed() {
        return open.progress() == Progress.ARMED && !adjusting();
    }

    /** True while the screw of the open step is being turned. */
    boolean adjusting() {
        return kind() == StepKind.LEFT && live() && (open.adjusting() || open.progress() == Progress.OPEN);
    }

    /** True where only ticks are left, as after the closing zero. */
    boolean ticking() {
        return kind() == StepKind.CHECK
                || kind() == StepKind.CLOSE && !open.readings().isEmpty();
    }

    Optional<StagePlate> stage() {
        return stage(open);
    }

    Optional<StagePlate> stage(StepState step) {
        return job.plate().stages().stream()
                .filter(s -> s.key().equals(step.step().stage()))
                .findFirst();
    }

    List<ChannelView> required() {
        return open.step().required().stream()
                .flatMap(role -> snapshot.channel(role).stream())
                .toList();
    }

    long settledCount() {
        return required().stream()
                .filter(c -> Gap.of(c, snapshot.timeNanos()).settled())
                .count();
    }

    int index() {
        for (int i = 0; i < job.steps().size(); i++) {
            if (job.steps().get(i).key().equals(open.key())) {
                return i;
            }
        }
        return 0;
    }
}
