package settlemark.job;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Role;

/** What the person does at the gas meter, and what comes of it. */
final class MeterWork {
    private final JobSoFar job;

    MeterWork(JobSoFar job) {
        this.job = job;
    }

    void act(long timeNanos, Act act) {
        if (act instanceof Act.MeterDial dial) {
            clocking(dial.step()).ifPresent(run -> dial(run, dial.cubicFeet()));
        } else if (act instanceof Act.PointerAtMark mark) {
            clocking(mark.step()).ifPresent(run -> mark(timeNanos, run));
        } else if (act instanceof Act.Unmark last) {
            clocking(last.step()).ifPresent(run -> run.clock.unmark());
        } else if (act instanceof Act.EndRun end) {
            clocking(end.step()).filter(run -> run.endClocked(job.heat)).ifPresent(run -> clocked(timeNanos, run));
        } else if (act instanceof Act.DropRun drop && !drop.reason().isBlank()) {
            clocking(drop.step()).ifPresent(run -> run.clock.drop(drop.reason()));
        }
    }

    /** With the runs that there are, though they are too few or do not agree. */
    void byHand(long timeNanos, StepRun run, String reason) {
        run.clock.end();
        if (!run.clocking(job.heat).counting().isEmpty()) {
            run.remarks.add("Taken by hand: " + reason + ".");
            clocked(timeNanos, run);
        }
    }

    void lookAtBurner(StepRun run, @Nullable ChannelNow manifold) {
        if (run.clock.running() && run.unsteady.isEmpty()) {
            run.unsteady = ClockedInput.unsteady(run, manifold, job.zeros, job.plate);
        }
    }

    private Optional<StepRun> clocking(String key) {
        return Optional.ofNullable(job.steps.find(key)).filter(run -> run.step.kind() == StepKind.CLOCK && !run.done());
    }

    /** The house has one meter: what is clocked later has the same dial until another is said. */
    private void dial(StepRun run, double cubicFeet) {
        job.steps.all().stream()
                .filter(s -> s == run || !s.done() && s.clock.runs().isEmpty())
                .forEach(s -> s.dialCubicFeet = cubicFeet);
    }

    private void mark(long timeNanos, StepRun run) {
        job.steps.disarmOthers(run);
        job.steps.handsAt(run);
        run.open(timeNanos);
        run.markClock(timeNanos);
        lookAtBurner(run, job.channels.get(Role.MANIFOLD));
    }

    private void clocked(long timeNanos, StepRun run) {
        Clocking clocking = run.clocking(job.heat);
        run.verdicts.clear();
        run.verdicts.addAll(clocking.verdicts(run.step, job.plate));
        run.remarks.addAll(ClockedInput.words(run.step, clocking, job.plate));
        run.finish(timeNanos, Progress.TAKEN);
        job.steps.next(timeNanos);
    }
}
