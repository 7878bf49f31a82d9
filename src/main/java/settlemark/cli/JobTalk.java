package settlemark.cli;

import java.io.PrintWriter;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import settlemark.job.Act;
import settlemark.job.GasHeat;
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
 * asks for; on the rig simulated hands do it first. A script's lines are taken only where something is asked. Longer than
 * most: each answer that can be given at any step stands here once.
 */
final class JobTalk implements Program.JobPerson {
    private static final String HELP = String.join(
            System.lineSeparator(),
            "  Enter      I did it",
            "  s REASON   skip this step",
            "  p          take the pressures once they stand, the temperatures later",
            "  t REASON   take the reading now, by hand",
            "  r [STEP]   do a finished step again (the last one, or by its key)",
            "  g STEP     go to another step, by its key",
            "  n TEXT     a note",
            "  h BTU SOURCE   heating value of the gas, Btu in a cubic foot, and who says so",
            "  l          list the steps and their keys",
            "  q          leave; settlemark job resume goes on here");
    /** Between two words on what is waited for, session time. */
    private static final long WORDS_NANOS = 20_000_000_000L;

    private final TypedLines lines;
    private final PrintWriter err;
    private final long patienceNanos;
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
        act(floor, new Act.Seen(notice.key()));
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
            case CHECK -> "Enter = " + nextTick(step).orElse("done") + " (s REASON, ? = help)";
            case CLOSE ->
                step.readings().isEmpty()
                        ? "Enter = " + plan.press() + " (s REASON, ? = help)"
                        : "Enter = " + nextTick(step).orElse("done") + " (s REASON, ? = help)";
            case CLOCK ->
                "Enter = " + plan.press()
                        + "; e = the run ends, u = that press was none, d REASON = drop the run, m FT3 ="
                        + " a turn of the dial ("
                        + JobWords.number(step.clocking().dialCubicFeet()) + " ft\u00b3)";
            case STATICS, COMBUSTION ->
                TypedValues.prompt(step) + "; then Enter = " + plan.press() + " (s REASON, ? = help)";
            default -> "Enter = " + plan.press() + " (s REASON, ? = help)";
        };
    }

    private static Optional<String> nextTick(StepState step) {
        return step.step().ticks().stream()
                .filter(t -> !step.ticked().containsKey(t))
                .findFirst();
    }

    private boolean typed(JobFloor floor, StepState step, String line)
            throws StoreException, LinkException, InterruptedException {
        if (line.equals("q")) {
            return false;
        }
        boolean command = line.equals("?") || line.equals("l") || line.matches("[srtpgnhedum]( .*)?");
        if (command) {
            command(floor, step, line.charAt(0), line.substring(1).strip());
            return true;
        }
        if (step.step().kind() == StepKind.RECORD) {
            if (line.isEmpty() && floor.handsAreSimulated()) {
                return hands(floor, step);
            }
            act(floor, new Act.Person(line));
            act(floor, new Act.Confirm(step.key()));
            return true;
        }
        if (step.step().kind().typed() && line.contains("=")) {
            entered(floor, step, line);
            return true;
        }
        if (!line.isEmpty()) {
            say("  \"" + line + "\" is not understood; ? says what can be typed");
            return true;
        }
        return floor.handsAreSimulated() ? hands(floor, step) : done(floor, step);
    }

    /** The person has done what the step asks. */
    private boolean done(JobFloor floor, StepState step) throws StoreException, LinkException, InterruptedException {
        String key = step.key();
        Act act = switch (step.step().kind()) {
            case CHECK -> new Act.Tick(key, nextTick(step).orElse(""), true);
            case CLOSE ->
                step.readings().isEmpty()
                        ? new Act.Confirm(key)
                        : new Act.Tick(key, nextTick(step).orElse(""), true);
            case CLOCK -> new Act.PointerAtMark(key);
            case LEFT -> new Act.CapOn(key);
            default -> new Act.Confirm(key);
        };
        act(floor, act);
        return true;
    }

    private void command(JobFloor floor, StepState step, char letter, String rest)
            throws StoreException, LinkException, InterruptedException {
        String key = step.key();
        switch (letter) {
            case 's' -> withReason(floor, rest, r -> new Act.Skip(key, r));
            case 't' -> withReason(floor, rest, r -> new Act.TakeNow(key, r));
            case 'p' -> pressures(floor, step);
            case 'd' -> withReason(floor, rest, r -> new Act.DropRun(key, r));
            case 'n' -> withReason(floor, rest, r -> new Act.Note(key, r));
            case 'e' -> act(floor, new Act.EndRun(key));
            case 'u' -> act(floor, new Act.Unmark(key));
            case 'm' ->
                number(rest)
                        .ifPresentOrElse(v -> meter(floor, key, v), () -> say("  say m and cubic feet, such as m 2"));
            case 'h' -> heat(floor, rest);
            case 'r' -> repeat(floor, rest);
            case 'g' -> go(floor, rest);
            case 'l' -> list(state(floor));
            default -> say(HELP);
        }
    }

    private void pressures(JobFloor floor, StepState step) throws StoreException, LinkException, InterruptedException {
        if (!step.step().inParts()) {
            say("  this step reads no pressures beside something that settles later");
            return;
        }
        if (step.progress() != Progress.ARMED) {
            done(floor, step);
        }
        floor.act(new Act.TakePressures(step.key()));
    }

    /** Such as {@code o2=6.4 co=12 stack=380 from analyser 0815}. */
    private void entered(JobFloor floor, StepState step, String line)
            throws StoreException, LinkException, InterruptedException {
        try {
            for (Act act : TypedValues.of(step, floor.snapshot().header(), line)) {
                act(floor, act);
            }
            state(floor).step(step.key()).orElseThrow().typed().values().stream()
                    .sorted((a, b) -> a.role().compareTo(b.role()))
                    .forEach(v -> say("  " + v.role().word() + " " + JobWords.number(v.value()) + " "
                            + v.unit().symbol() + " from " + v.instrument()));
        } catch (IllegalArgumentException e) {
            say("  " + e.getMessage());
        }
    }

    private interface Reasoned {
        Act of(String reason);
    }

    private void withReason(JobFloor floor, String reason, Reasoned act)
            throws StoreException, LinkException, InterruptedException {
        if (reason.isEmpty()) {
            say("  say why, behind the letter");
        } else {
            act(floor, act.of(reason));
        }
    }

    private void meter(JobFloor floor, String key, double cubicFeet) {
        try {
            floor.act(new Act.MeterDial(key, cubicFeet));
        } catch (IllegalArgumentException e) {
            say("  " + e.getMessage());
        }
    }

    private void heat(JobFloor floor, String rest) {
        int space = rest.indexOf(' ');
        try {
            double value = Double.parseDouble(space < 0 ? rest : rest.substring(0, space));
            floor.act(new Act.Heat(new GasHeat(
                    value, 0.01, space < 0 ? "" : rest.substring(space + 1).strip())));
        } catch (IllegalArgumentException e) {
            say("  say h, a figure and who says so, such as h 1028 the supplier's letter (" + e.getMessage() + ")");
        }
    }

    private static Optional<Double> number(String text) {
        try {
            return Optional.of(Double.parseDouble(text)).filter(Double::isFinite);
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }

    private void repeat(JobFloor floor, String key) throws StoreException, LinkException, InterruptedException {
        JobState job = state(floor);
        Optional<StepState> old = job.steps().stream()
                .filter(s ->
                        s.done() && !s.superseded() && (key.isEmpty() || s.key().equals(key)))
                .reduce((a, b) -> b.doneNanos() >= a.doneNanos() ? b : a);
        if (old.isPresent()) {
            act(floor, new Act.Repeat(old.get().key()));
        } else {
            say("  no finished step is called \"" + key + "\"; l lists them");
        }
    }

    /** Arms another step, which then is the one at hand. */
    private void go(JobFloor floor, String key) throws StoreException, LinkException, InterruptedException {
        Optional<StepState> other = state(floor).step(key).filter(s -> !s.done());
        if (other.isEmpty()) {
            say("  no open step is called \"" + key + "\"; l lists them");
        } else if (other.get().step().kind() == StepKind.LEFT) {
            act(floor, new Act.Adjust(key));
        } else {
            act(floor, new Act.Confirm(key));
        }
    }

    private void list(JobState job) {
        job.steps()
                .forEach(s -> say(String.format(
                        Locale.ROOT,
                        "  %-24s %s, %s",
                        s.key(),
                        s.step().title(),
                        s.progress().name().toLowerCase(Locale.ROOT))));
    }

    /** Reports an act and waits until it shows, or a moment where it changes nothing. */
    private static void act(JobFloor floor, Act act) throws StoreException, LinkException, InterruptedException {
        Snapshot before = floor.snapshot();
        floor.act(act);
        for (int i = 0; i < 20; i++) {
            if (!floor.snapshot().job().equals(before.job())) {
                return;
            }
            floor.pass();
        }
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
