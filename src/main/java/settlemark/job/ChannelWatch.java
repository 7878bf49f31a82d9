package settlemark.job;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Role;
import settlemark.settle.SettledTogether;
import settlemark.settle.StageReading;

/** Looks at the channels of a running job sample by sample, and has an armed step's reading taken where it is due. */
final class ChannelWatch {
    private final JobSoFar job;
    private final Taking taking;
    private final MeterWork meter;

    ChannelWatch(JobSoFar job, Taking taking, MeterWork meter) {
        this.job = job;
        this.taking = taking;
        this.meter = meter;
    }

    /** The channels as they stand after a sample; takes the reading of an armed step where it is due. */
    void observe(long timeNanos, Map<Role, ChannelNow> now) {
        job.channels.clear();
        job.channels.putAll(now);
        job.safety.see(timeNanos, job.channels, job.zeros, job.plate);
        ChannelNow manifold = job.channels.get(Role.MANIFOLD);
        beforeTheLight(timeNanos, manifold);
        if (manifold != null && !manifold.settled() && !steadyByRule(Role.MANIFOLD)) {
            job.readiness.manifoldMoves(timeNanos);
        }
        List<StepRun> steps = job.steps.all();
        for (int i = 0; i < steps.size(); i++) {
            StepRun run = steps.get(i);
            if (run.adjusting && manifold != null) {
                if (manifold.settled()) {
                    if (run.beforeTheCap.due(timeNanos)) {
                        run.beforeTheCap.keep(taking.adjusted(timeNanos, run));
                    }
                    run.beforeTheCap.standing(timeNanos);
                } else {
                    run.beforeTheCap.moving(timeNanos);
                }
            }
            if (run.progress == Progress.ARMED && run.step.kind().measuring()) {
                watch(timeNanos, run, manifold);
            }
            meter.lookAtBurner(run, manifold);
        }
    }

    private void beforeTheLight(long timeNanos, @Nullable ChannelNow manifold) {
        Double zero = job.zeros.get(Role.MANIFOLD);
        if (manifold != null && zero != null) {
            job.prePurge.see(timeNanos, manifold.value() - zero, manifold.unit(), job.plate);
        }
    }

    /** A rule that stands alone has found it steady, or it stays where it was taken, though there is no proof. */
    private boolean steadyByRule(Role role) {
        for (StepRun run : job.steps.all()) {
            if (run.progress == Progress.ARMED && (run.takenFirst.has(role) || steadyByRule(run, role))) {
                return true;
            }
        }
        return false;
    }

    private static boolean steadyByRule(StepRun run, Role role) {
        return !run.step.settledBy().needsProof(role) && run.rules.holds(role);
    }

    private void watch(long timeNanos, StepRun run, @Nullable ChannelNow manifold) {
        if (run.step.kind() == StepKind.HOLD) {
            hold(timeNanos, run);
            return;
        }
        if (run.step.kind() == StepKind.SHUT && manifold != null) {
            run.fall.see(manifold.timeNanos(), manifold.value() - job.zeros.getOrDefault(Role.MANIFOLD, 0.0));
        }
        if (run.step.kind().firing() && manifold != null) {
            StagePlate stage = job.plate.stage(run.step.stage());
            double value = manifold.value() - job.zeros.getOrDefault(Role.MANIFOLD, 0.0);
            double inUnit = manifold.unit().to(stage.unit()).apply(value);
            run.creep.see(timeNanos, value, inUnit > Readiness.litAt(stage));
        }
        ChannelNow inlet = job.channels.get(Role.INLET);
        if (run.step.kind() == StepKind.LOCK_UP && inlet != null) {
            Optional<String> climbs = run.climb.see(run.armedNanos, inlet.timeNanos(), inlet.value(), inlet.unit());
            if (climbs.isPresent()) {
                run.remarks.add(climbs.get());
                job.safety.climbing(timeNanos, climbs.get(), inlet.value(), inlet.unit());
            }
        }
        run.rules.see(run.armedNanos, job.channels, job.zeros);
        takeFirst(timeNanos, run);
        run.waitingFor = job.readiness.waitingFor(run, timeNanos, job.channels, job.zeros);
        together(timeNanos, run);
        if (run.waitingFor.isNothing()) {
            taking.take(timeNanos, run, "");
        }
    }

    /** Pressures that were asked for first are taken once they stand, and dropped where one moves. */
    private void takeFirst(long timeNanos, StepRun run) {
        Optional<String> moved = run.takenFirst.moved(timeNanos, job.channels);
        if (moved.isPresent()) {
            run.remarks.add(moved.get());
            run.marks.add(new StepState.Mark(timeNanos, StepState.PRESSURES_DROPPED));
        }
        if (!run.takenFirst.due()) {
            return;
        }
        List<Role> pressures = TakenFirst.pressures(run.step);
        if (job.readiness
                .waitingFor(run, pressures, timeNanos, job.channels, job.zeros)
                .isNothing()) {
            run.takenFirst.take(
                    taking.reading(run, Taking.purpose(run.step.kind()), pressures, timeNanos, "", job.zeros),
                    job.channels);
            run.marks.add(new StepState.Mark(timeNanos, StepState.PRESSURES_TAKEN));
        }
    }

    /** What was ready and has moved since is said, and marked on the chart. */
    private void together(long timeNanos, StepRun run) {
        Role mover = job.readiness.notSettled(run, timeNanos, job.channels);
        if (run.together.changes(mover != null)) {
            String why = mover == null ? "" : Readings.reason(mover, run, job.channels);
            run.together.see(timeNanos / 1e9, mover == null ? "" : mover.word(), why);
            if (mover != null && run.together.standing() == SettledTogether.Standing.SPOILED) {
                run.marks.add(new StepState.Mark(timeNanos, mover.word() + " moved"));
            }
        }
        if (run.together.standing() == SettledTogether.Standing.SPOILED) {
            run.waitingFor = run.waitingFor.with(" (" + run.together.words() + ")");
        } else if (!run.waitingFor.isNothing()) {
            run.waitingFor = run.waitingFor.with(run.takenFirst.standing());
        }
    }

    /** A trapped pressure is read twice; in between it may move as it likes, that is what is looked for. */
    private void hold(long timeNanos, StepRun run) {
        run.waitingFor = job.readiness.waitingForHold(run, timeNanos, job.channels);
        if (!run.waitingFor.isNothing()) {
            return;
        }
        if (run.watchedFromNanos >= 0) {
            taking.take(timeNanos, run, "");
            return;
        }
        StageReading start = taking.reading(run, Taking.START, run.step.required(), timeNanos, "", job.zeros);
        boolean gone = run.whenTrapped != null && TrappedPressure.gone(run.whenTrapped, start);
        StageReading from = gone ? Objects.requireNonNull(run.whenTrapped) : start;
        run.readings.add(from);
        job.taken.add(from);
        run.watchedFromNanos = from.timeNanos();
        run.marks.add(new StepState.Mark(from.timeNanos(), "watched from here"));
        if (gone) {
            run.remarks.add(TrappedPressure.GONE);
            taking.take(timeNanos, run, "");
        }
    }
}
