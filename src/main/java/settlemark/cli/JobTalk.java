package settlemark.cli;

import java.io.PrintWriter;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import settlemark.job.Act;
import settlemark.job.JobState;
import settlemark.job.PlanStep;
import settlemark.job.Progress;
import settlemark.job.SafetyNotice;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.session.JobFloor;
import settlemark.session.LinkException;
import settlemark.session.Snapshot;
import settlemark.session.StoreException;

/**
 * A job by typing: a line a step with its caution, then what the person says. An empty line reports the act that the step
 * asks for; on the rig simulated hands do it first. A script's lines are taken only where something is asked.
 */
final class JobTalk implements Program.JobPerson {
    /** Between two words on what is waited for, session time. */
    private static final long WORDS_NANOS = 20_000_000_000L;

    private final TypedLines lines;
    private final PrintWriter err;
    private final long patienceNanos;
    private final TypedActs acts = new TypedActs(this::say);
    private final Set<String> told = new HashSet<>();
    private final Map<String, Integer> remarks = new HashMap<>();
    private String announced = "";
    private long saidNanos = Long.MIN_VALUE;
    private String said = "";

    /** @param patienceSeconds how long a reading may take to settle before it is asked what to do */
    JobTalk(TypedLines lines, PrintWriter err, double patienceSeconds) {
        this.lines = lines;
        this.err = err;
        this.patienceNanos = Math.round(patienceSeconds * 1e9);
    }

    @Override
    public boolean work(JobFloor floor) throws StoreException, LinkException, InterruptedException {
        JobState begun = state(floor);
        begun.steps().stream().filter(StepState::done).map(StepState::key).forEach(told::add);
        if (!told.isEmpty()) {
            say(told.size() + " of " + begun.steps().size() + " steps are done already");
        }
        while (true) {
            JobState job = state(floor);
            tell(job);
            Optional<SafetyNotice> alarm = job.alarm();
            if (alarm.isPresent()) {
                if (!seen(floor, alarm.get())) {
                    return false;
                }
            } else if (job.currentStep().isEmpty()) {
                return true;
            } else if (!at(floor, job, job.currentStep().get())) {
                return false;
            }
        }
    }

    private static JobState state(JobFloor floor) {
        return floor.snapshot().job().orElseThrow();
    }

    private void say(String words) {
        err.println(words);
        err.flush();
    }

    /** Results and remarks that are new since the last look. */
    private void tell(JobState job) {
        for (StepState step : job.steps()) {
            int known = remarks.getOrDefault(step.key(), 0);
            List<String> all = step.remarks();
            if (step.done() && told.add(step.key())) {
                JobWords.result(step).forEach(this::say);
            }
            if (all.size() > known) {
                remarks.put(step.key(), all.size());
                all.subList(known, all.size()).forEach(r -> say("  " + r));
            }
        }
    }

    private boolean seen(JobFloor floor, SafetyNotice notice)
            throws StoreException, LinkException, InterruptedException {
        say("SAFETY: " + notice.words() + ". " + notice.caution());
        Optional<String> line = ask("Enter = I have seen it");
        if (line.isEmpty() || line.get().equals("q")) {
            return false;
        }
        TypedActs.act(floor, new Act.Seen(notice.key()));
        return true;
    }

    /** Empty at the end of all input. */
    private Optional<String> ask(String prompt) throws InterruptedException {
        say("  > " + prompt);
        return lines.next();
    }

    /** Does the next thing at a step; false where the job is left. */
    private boolean at(JobFloor floor, JobState job, StepState step)
            throws StoreException, LinkException, InterruptedException {
        if (!announced.equals(step.key())) {
            announced = step.key();
            say(JobWords.head(job, step));
            if (step.step().kind() == StepKind.PLATE) {
                JobWords.plate(job.plate()).forEach(this::say);
            }
        }
        if (step.progress() == Progress.ARMED) {
            return floor.handsAreSimulated() ? hands(floor, step) : await(floor, step);
        }
        Optional<String> line = ask(prompt(step));
        if (line.isEmpty()) {
            say("the input has ended at the step \"" + step.key() + "\"");
            return false;
        }
        return typed(floor, step, line.get());
    }

    private static String prompt(StepState step) {
        PlanStep plan = step.step();
        return switch (plan.kind()) {
            case RECORD -> "who did the work? Enter alone leaves it empty";
            case CHECK -> "Enter = " + TypedActs.nextTick(step).orElse("done") + " (s REASON, ? = help)";
            case CLOSE ->
                step.readings().isEmpty()
                        ? "Enter = " + plan.press() + " (s REASON, ? = help)"
                        : "Enter = " + TypedActs.nextTick(step).orElse("done") + " (s REASON, ? = help)";
            case CLOCK ->
                "Enter = " + plan.press()
                        + "; e = the run ends, u = that press was none, d REASON = drop the run, m FT3 ="
                        + " a turn of the dial ("
                        + JobWords.number(step.clocking().dialCubicFeet()) + " ft\u00b3)";
            case STATICS, COMBUSTION ->
                TypedValues.prompt(step) + "; then Enter = " + plan.press() + " (s REASON, ? = help)";
            default -> "Enter = " + plan.press() + also(step) + " (s REASON, ? = help)";
        };
    }

    /** What the press says besides. */
    private static String also(StepState step) {
        List<String> said = step.pressTicks();
        return said.isEmpty() ? "" : "; it says too: " + String.join("; ", said);
    }

    private boolean typed(JobFloor floor, StepState step, String line)
            throws StoreException, LinkException, InterruptedException {
        if (line.equals("q")) {
            return false;
        }
        if (TypedActs.is(line)) {
            acts.typed(floor, step, line);
            return true;
        }
        if (step.step().kind() == StepKind.RECORD) {
            if (line.isEmpty() && floor.handsAreSimulated()) {
                return hands(floor, step);
            }
            TypedActs.act(floor, new Act.Person(line));
            TypedActs.act(floor, new Act.Confirm(step.key()));
            return true;
        }
        if (step.step().kind().typed() && line.contains("=")) {
            acts.entered(floor, step, line);
            return true;
        }
        if (!line.isEmpty()) {
            say("  \"" + line + "\" is not understood; ? says what can be typed");
            return true;
        }
        if (floor.handsAreSimulated()) {
            return hands(floor, step);
        }
        TypedActs.done(floor, step);
        return true;
    }

    /** Simulated hands do the step; it is over when it is done, or when there is something to see. */
    private boolean hands(JobFloor floor, StepState step) throws StoreException, LinkException, InterruptedException {
        floor.handsAtWork(true);
        try {
            while (true) {
                floor.pass();
                JobState job = state(floor);
                boolean over = job.step(step.key()).map(StepState::done).orElse(true);
                if (over || job.alarm().isPresent()) {
                    return true;
                }
                waiting(floor.snapshot(), job.step(step.key()).orElseThrow());
            }
        } finally {
            floor.handsAtWork(false);
        }
    }

    private void waiting(Snapshot now, StepState step) {
        if (!step.waitingFor().isEmpty()
                && !step.waitingFor().equals(said)
                && (saidNanos == Long.MIN_VALUE || now.timeNanos() - saidNanos >= WORDS_NANOS)) {
            said = step.waitingFor();
            saidNanos = now.timeNanos();
            say("  waiting: " + said);
        }
    }

    /** Waits until an armed step has taken its reading, or something else happens. */
    private boolean await(JobFloor floor, StepState step) throws StoreException, LinkException, InterruptedException {
        long from = floor.snapshot().timeNanos();
        while (true) {
            floor.pass();
            Snapshot now = floor.snapshot();
            JobState job = now.job().orElseThrow();
            @Nullable StepState is = job.step(step.key()).orElse(null);
            if (is == null || is.progress() != Progress.ARMED || job.alarm().isPresent()) {
                return true;
            }
            tell(job);
            waiting(now, is);
            Optional<String> typed = lines.typed();
            if (typed.isEmpty() && now.timeNanos() - from > patienceNanos) {
                typed = ask("not settled yet, " + is.waitingFor()
                        + ". Enter = wait on, t REASON = take it by hand, s REASON = skip");
                from = now.timeNanos();
                if (typed.isEmpty()) {
                    say("the input has ended at the step \"" + step.key() + "\"");
                    return false;
                }
            }
            if (typed.isPresent() && !typed.get().isEmpty()) {
                return typed(floor, is, typed.get());
            }
        }
    }
}
