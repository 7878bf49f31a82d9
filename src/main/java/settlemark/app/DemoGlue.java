package settlemark.app;

import java.util.ArrayList;
import java.util.List;
import settlemark.job.Act;
import settlemark.job.JobState;
import settlemark.job.PlanStep;
import settlemark.job.Progress;
import settlemark.job.StagePlate;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.measure.Role;
import settlemark.rig.DemoTechnician;
import settlemark.rig.DemoTechnician.Report;
import settlemark.rig.DemoTechnician.Task;
import settlemark.session.ChannelView;
import settlemark.session.DemoHands;
import settlemark.session.Snapshot;

/** Lets the demo's technician do a job: says what the step at hand needs, and turns what is reported into acts. */
final class DemoGlue {
    private static final int PATIENCE_SECONDS = 1200;
    private static final String PERSON = "Demo technician (simulated)";

    private final DemoTechnician technician;
    private final DemoHands hands;

    DemoGlue(DemoTechnician technician, DemoHands hands) {
        this.technician = technician;
        this.hands = hands;
    }

    /** What the technician does at this moment. */
    List<Act> look(Snapshot snapshot) {
        JobState job = snapshot.job().orElseThrow();
        if (job.currentStep().isEmpty()) {
            return List.of();
        }
        StepState step = job.currentStep().get();
        Report report = technician.look(seen(snapshot, job, step));
        List<Act> acts = new ArrayList<>();
        switch (step.step().kind()) {
            case CHECK -> step.step().ticks().forEach(item -> acts.add(new Act.Tick(step.key(), item, true)));
            case CLOCK -> clocked(snapshot.timeNanos(), step, report, acts);
            case PLATE, PROBES -> acts.add(new Act.Confirm(step.key()));
            case STATICS, COMBUSTION -> typed(snapshot, step, report, acts);
            case RECORD -> {
                acts.add(new Act.Person(PERSON));
                acts.add(new Act.Confirm(step.key()));
            }
            case ZERO, LOCK_UP, THIS_APPLIANCE, ALL_APPLIANCES, FOUND, LEFT, SHUT, HOLD, CLOSE ->
                measured(snapshot.timeNanos(), step, report, acts);
        }
        return acts;
    }

    private static void clocked(long now, StepState step, Report report, List<Act> acts) {
        switch (report) {
            case MARK -> acts.add(new Act.PointerAtMark(step.key()));
            case END_RUN -> acts.add(new Act.EndRun(step.key()));
            case NOTHING, DONE, SCREW_DEAD -> {
                if (stuck(now, step)) {
                    acts.add(new Act.Skip(step.key(), "the meter could not be clocked at this stage"));
                }
            }
        }
    }

    /** Once the burner has come to its stage and the air is warm, what the analyser shows is typed. */
    private void typed(Snapshot snapshot, StepState step, Report report, List<Act> acts) {
        if (stuck(snapshot.timeNanos(), step)) {
            acts.add(new Act.Skip(step.key(), "the burner did not come to this stage"));
            return;
        }
        boolean warm =
                snapshot.channel(Role.SUPPLY).map(c -> c.settle().settled()).orElse(true);
        if (report == Report.DONE && warm && step.progress() != Progress.ARMED) {
            hands.analysis()
                    .ifPresent(a -> acts.addAll(a.acts(step.key(), step.step().required())));
            acts.addAll(step.saidWith(new Act.Confirm(step.key())));
        }
    }

    private static void measured(long now, StepState step, Report report, List<Act> acts) {
        if (stuck(now, step)) {
            giveUp(step, acts);
            return;
        }
        if (step.step().kind() == StepKind.CLOSE && !step.readings().isEmpty()) {
            step.step().ticks().forEach(item -> acts.add(new Act.Tick(step.key(), item, true)));
        } else if (step.step().kind() == StepKind.HOLD && !step.remarks().isEmpty() && !step.done()) {
            if (step.progress() != Progress.ARMED) {
                acts.add(new Act.Skip(step.key(), "no pressure could be trapped"));
            }
        } else if (report != Report.NOTHING && step.progress() != Progress.ARMED) {
            acts.addAll(step.saidWith(step.adjusting() ? new Act.CapOn(step.key()) : new Act.Confirm(step.key())));
        }
    }

    /** A reading that does not come, or a stage that never lights: a person would not wait for ever either. */
    private static boolean stuck(long now, StepState step) {
        long since = step.progress() == Progress.ARMED ? step.armedNanos() : step.openedNanos();
        return step.step().kind() != StepKind.HOLD && (now - since) / 1e9 > PATIENCE_SECONDS;
    }

    private static void giveUp(StepState step, List<Act> acts) {
        if (step.progress() != Progress.ARMED) {
            acts.add(
                    step.adjusting()
                            ? new Act.Skip(step.key(), "the burner did not come to this stage")
                            : new Act.Confirm(step.key()));
        } else if (step.step().kind().firing()) {
            acts.add(new Act.Skip(step.key(), "not taken: " + step.waitingFor()));
        } else {
            acts.add(new Act.TakeNow(step.key(), "did not settle in " + PATIENCE_SECONDS / 60 + " minutes"));
        }
    }

    private static DemoTechnician.Look seen(Snapshot snapshot, JobState job, StepState step) {
        String stage = stage(job, step.step());
        double target = stage.isEmpty() ? Double.NaN : job.plate().stage(stage).manifoldTarget();
        double manifold =
                snapshot.channel(Role.MANIFOLD).map(ChannelView::value).orElse(Double.NaN);
        boolean settled =
                snapshot.channel(Role.MANIFOLD).map(c -> c.settle().settled()).orElse(false);
        return new DemoTechnician.Look(snapshot.timeNanos(), task(step), stage, target, manifold, settled);
    }

    /** The supply is tried with the highest fire that there is. */
    private static String stage(JobState job, PlanStep step) {
        boolean supply = step.kind() == StepKind.THIS_APPLIANCE
                || step.kind() == StepKind.ALL_APPLIANCES
                || step.kind() == StepKind.STATICS;
        List<StagePlate> stages = job.plate().stages();
        return supply ? stages.get(stages.size() - 1).key() : step.stage();
    }

    private static Task task(StepState step) {
        if (step.progress() == Progress.ARMED) {
            return Task.REST;
        }
        return switch (step.step().kind()) {
            case PLATE, PROBES, CHECK, RECORD -> Task.REST;
            case ZERO -> Task.OPEN_PORTS;
            case CLOSE -> step.readings().isEmpty() ? Task.OPEN_PORTS : Task.REST;
            case LOCK_UP -> Task.LOCK_UP;
            case FOUND -> Task.FIRE;
            case LEFT -> step.adjusting() ? Task.ADJUST : Task.REST;
            case SHUT -> Task.SHUT;
            case THIS_APPLIANCE -> Task.FIRE;
            case ALL_APPLIANCES -> Task.FIRE_ALL;
            case HOLD -> Task.TRAP;
            case CLOCK -> Task.CLOCK;
            case STATICS, COMBUSTION -> Task.FIRE;
        };
    }
}
