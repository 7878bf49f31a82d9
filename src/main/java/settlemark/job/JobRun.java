package settlemark.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Role;
import settlemark.settle.StageReading;

/**
 * A job while it runs: takes the person's acts and the channels' states in the order of time and decides, from those
 * alone, when a reading is taken. The same acts and states give the same job again.
 *
 * <p>For one thread. An act that makes no sense where the job stands (confirming a finished step, capping a step that
 * adjusts nothing) changes nothing.
 */
public final class JobRun {
    private final JobPlan plan;
    private final JobSoFar job;
    private final Taking taking;
    private final MeterWork meter;
    private final ChannelWatch watch;
    private final List<JobState.NoteTaken> notes = new ArrayList<>();
    private String person = "";

    public JobRun(JobPlan plan, RatingPlate plate) {
        this.plan = plan;
        this.job = new JobSoFar(plan, plate);
        this.taking = new Taking(job);
        this.meter = new MeterWork(job);
        this.watch = new ChannelWatch(job, taking, meter);
    }

    /** What the person did at a session time. */
    public void act(long timeNanos, Act act) {
        if (act instanceof Act.Person said) {
            person = said.name();
        } else if (act instanceof Act.Plate entered) {
            replacePlate(entered.plate());
        } else if (act instanceof Act.Note note) {
            notes.add(new JobState.NoteTaken(timeNanos, note.step(), note.text()));
        } else if (act instanceof Act.Confirm confirm) {
            confirm(timeNanos, job.steps.find(confirm.step()));
        } else if (act instanceof Act.Adjust adjust) {
            adjust(timeNanos, job.steps.find(adjust.step()));
        } else if (act instanceof Act.CapOn cap) {
            capOn(timeNanos, job.steps.find(cap.step()));
        } else if (act instanceof Act.TakeNow now) {
            takeByHand(timeNanos, job.steps.find(now.step()), now.reason());
        } else if (act instanceof Act.TakePressures first) {
            pressuresFirst(job.steps.find(first.step()));
        } else if (act instanceof Act.Skip skip) {
            skip(timeNanos, job.steps.find(skip.step()), skip.reason());
        } else if (act instanceof Act.Repeat repeat) {
            repeat(timeNanos, job.steps.find(repeat.step()));
        } else if (act instanceof Act.Tick tick) {
            tick(timeNanos, job.steps.find(tick.step()), tick);
        } else if (act instanceof Act.Seen seen) {
            job.safety.seen(timeNanos, seen.notice());
        } else if (act instanceof Act.Heat given) {
            job.heat = given.heat();
        } else if (act instanceof Act.Entered entered) {
            entered(timeNanos, job.steps.find(entered.step()), entered);
        } else if (act instanceof Act.Former former) {
            taking.lastVisit.is(former);
        } else if (act instanceof Act.Instrument said) {
            taking.instruments.is(timeNanos, said);
        } else if (act instanceof Act.Settings said) {
            settings(timeNanos, said);
        } else if (act instanceof Act.GoOn goOn) {
            goOn(timeNanos, goOn.why());
        } else {
            meter.act(timeNanos, act);
        }
    }

    /** The detectors begin afresh with them; what is armed waits for them. */
    private void settings(long timeNanos, Act.Settings said) {
        if (taking.settings.are(timeNanos, said, person)) {
            mark(timeNanos, "other settings of settled");
        }
    }

    /** Whatever was armed or counted waits for the person again: nobody saw what happened in between. */
    private void goOn(long timeNanos, String why) {
        for (StepRun run : job.steps.all()) {
            if (run.progress == Progress.ARMED) {
                run.disarm();
                run.adjusting = run.step.kind() == StepKind.LEFT;
            }
            run.clock.drop(why);
            run.beforeTheCap.moving(timeNanos);
        }
        mark(timeNanos, why);
    }

    private void mark(long timeNanos, String words) {
        job.steps.atHand().ifPresent(run -> run.marks.add(new StepState.Mark(timeNanos, words)));
    }

    private void entered(long timeNanos, @Nullable StepRun run, Act.Entered act) {
        if (run != null && run.step.kind().typed() && !run.done()) {
            run.open(timeNanos);
            run.typed.put(act.role(), TypedValue.of(act, timeNanos));
        }
    }

    /** The channels as they stand after a sample; takes the reading of an armed step where it is due. */
    public void observe(long timeNanos, Map<Role, ChannelNow> now) {
        watch.observe(timeNanos, now);
    }

    private static void pressuresFirst(@Nullable StepRun run) {
        if (run != null && run.progress == Progress.ARMED && run.step.inParts()) {
            run.takenFirst.want();
        }
    }

    public JobState state() {
        return new JobState(
                plan,
                job.plate,
                job.steps.all().stream().map(s -> s.state(job.heat)).toList(),
                job.steps.current(),
                job.zeros,
                person,
                notes,
                job.safety.notices(),
                taking.instruments.all(),
                taking.lastVisit.visits(),
                taking.settings.all());
    }

    /** Readings taken since the last call. */
    public List<StageReading> drainTaken() {
        if (job.taken.isEmpty()) {
            return List.of();
        }
        List<StageReading> result = List.copyOf(job.taken);
        job.taken.clear();
        return result;
    }

    private void replacePlate(RatingPlate entered) {
        boolean measured = job.steps.all().stream().anyMatch(s -> !s.verdicts.isEmpty());
        if (!measured) {
            // Another fuel holds another heat, unless somebody has said which.
            job.heat =
                    job.heat.equals(GasHeat.customary(job.plate.fuel())) ? GasHeat.customary(entered.fuel()) : job.heat;
            job.plate = entered;
            job.readiness = new Readiness(entered);
        }
    }

    private void confirm(long timeNanos, @Nullable StepRun run) {
        if (run == null || run.done() || run.progress == Progress.ARMED || run.adjusting) {
            return;
        }
        if (run.step.kind() == StepKind.CLOCK || run.step.kind() == StepKind.CHECK && !run.allTicked()) {
            return;
        }
        if (run.step.kind().measuring()) {
            if (run.step.kind() == StepKind.CLOSE && !run.readings.isEmpty() || nothingTrapped(run)) {
                return;
            }
            arm(timeNanos, run);
        } else {
            run.open(timeNanos);
            run.finish(timeNanos, Progress.TAKEN);
            job.steps.next(timeNanos);
        }
    }

    private void arm(long timeNanos, StepRun run) {
        job.steps.disarmOthers(run);
        job.steps.handsAt(run);
        run.arm(timeNanos);
        if (run.step.kind() == StepKind.HOLD) {
            run.whenTrapped = taking.reading(run, Taking.START, run.step.required(), timeNanos, "", job.zeros);
        }
    }

    /** Where no pressure is trapped none can be seen to go: the watch is not begun, and the step says why. */
    private boolean nothingTrapped(StepRun run) {
        if (run.step.kind() != StepKind.HOLD) {
            return false;
        }
        String words = TrappedPressure.nothing(run.step.required(), job.channels, job.zeros, job.plate);
        if (!words.isEmpty() && !run.remarks.contains(words)) {
            run.remarks.add(words);
        }
        return !words.isEmpty();
    }

    private void adjust(long timeNanos, @Nullable StepRun run) {
        if (run != null && run.step.kind() == StepKind.LEFT && !run.done()) {
            job.steps.disarmOthers(run);
            job.steps.handsAt(run);
            run.open(timeNanos);
            run.disarm();
            run.adjusting = true;
            run.marks.add(new StepState.Mark(timeNanos, "adjusting"));
        }
    }

    private void capOn(long timeNanos, @Nullable StepRun run) {
        if (run == null || run.step.kind() != StepKind.LEFT || run.done() || run.progress == Progress.ARMED) {
            return;
        }
        StageReading adjusted = run.beforeTheCap.reading(timeNanos).orElseGet(() -> taking.adjusted(timeNanos, run));
        if (!adjusted.channels().isEmpty()) {
            run.readings.add(adjusted);
            job.taken.add(adjusted);
        }
        arm(timeNanos, run);
        run.marks.add(new StepState.Mark(timeNanos, "cap on"));
    }

    private void takeByHand(long timeNanos, @Nullable StepRun run, String reason) {
        if (run != null && run.step.kind() == StepKind.CLOCK && !run.done() && !reason.isBlank()) {
            meter.byHand(timeNanos, run, reason);
            return;
        }
        boolean known = run != null
                        && run.step.kind().typed()
                        && !Readings.roles(run, job.channels).isEmpty()
                || run != null
                        && !run.step.kind().typed()
                        && run.step.required().stream()
                                .allMatch(r -> job.channels.containsKey(r)
                                        && Double.isFinite(job.channels.get(r).value()));
        if (run != null && known && run.step.kind().measuring() && !run.done() && !reason.isBlank()) {
            job.steps.handsAt(run);
            run.open(timeNanos);
            if (!run.waitingFor.isNothing()) {
                run.remarks.add("Taken by hand while " + run.waitingFor.words() + ".");
            }
            taking.take(timeNanos, run, reason);
        }
    }

    private void skip(long timeNanos, @Nullable StepRun run, String reason) {
        if (run != null && !run.done() && !reason.isBlank()) {
            run.open(timeNanos);
            run.skipReason = reason;
            run.finish(timeNanos, Progress.SKIPPED);
            job.steps.next(timeNanos);
        }
    }

    private void repeat(long timeNanos, @Nullable StepRun old) {
        if (old == null || !old.done() || old.superseded) {
            return;
        }
        old.superseded = true;
        job.steps.again(timeNanos, old);
    }

    private void tick(long timeNanos, @Nullable StepRun run, Act.Tick tick) {
        if (run == null || run.done() || !run.step.ticks().contains(tick.item())) {
            return;
        }
        run.open(timeNanos);
        if (tick.done()) {
            run.ticked.put(tick.item(), timeNanos);
        } else {
            run.ticked.remove(tick.item());
        }
        taking.finishTicked(timeNanos, run);
    }
}
