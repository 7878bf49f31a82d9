package settlemark.app;

import java.util.Set;
import settlemark.job.JobState;
import settlemark.job.Progress;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.rig.DemoRig;

/** A simulated furnace that a job goes on with: its screws stand where the job has left them, not where it found them. */
final class RigAsLeft {
    private static final Set<String> SCREWS = Set.of("low", "high");

    private RigAsLeft() {}

    static void stands(DemoRig rig, JobState job) {
        for (StepState step : job.steps()) {
            boolean left = step.step().kind() == StepKind.LEFT && step.progress() == Progress.TAKEN;
            if (left && SCREWS.contains(step.step().stage())) {
                step.reading()
                        .flatMap(r -> r.channel(Role.MANIFOLD))
                        .ifPresent(m -> rig.leftAt(
                                step.step().stage(),
                                m.unit().to(Unit.INCH_OF_WATER).apply(m.value())));
            }
        }
    }
}
