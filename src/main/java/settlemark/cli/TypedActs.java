package settlemark.cli;

import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import settlemark.job.Act;
import settlemark.job.GasHeat;
import settlemark.job.JobState;
import settlemark.job.Progress;
import settlemark.job.SettingsChange;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.session.JobFloor;
import settlemark.session.LinkException;
import settlemark.session.Snapshot;
import settlemark.session.StoreException;

/** Reports acts for what is typed: the act that a step asks for, and each that can be typed at any step. */
final class TypedActs {
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
            "  settings   what counts as settled; settings gas.drift=0.01 sets it otherwise from now on",
            "  l          list the steps and their keys",
            "  q          leave; settlemark job resume goes on here");
    private static final String SETTINGS = "settings";

    private final Consumer<String> say;

    /** @param say gets each line for the person */
    TypedActs(Consumer<String> say) {
        this.say = say;
    }

    /** Whether a line is one of those that can be typed at any step. */
    static boolean is(String line) {
        return line.equals("?") || line.equals("l") || isSettings(line) || line.matches("[srtpgnhedum]( .*)?");
    }

    private static boolean isSettings(String line) {
        return line.equals(SETTINGS) || line.startsWith(SETTINGS + " ");
    }

    /** Does what such a line says, or says why not. */
    void typed(JobFloor floor, StepState step, String line) throws StoreException, LinkException, InterruptedException {
        if (isSettings(line)) {
            settings(floor, line.substring(SETTINGS.length()).strip());
        } else {
            letter(floor, step, line.charAt(0), line.substring(1).strip());
        }
    }

    private void letter(JobFloor floor, StepState step, char letter, String rest)
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
            case 'm' -> meter(floor, key, rest);
            case 'h' -> heat(floor, rest);
            case 'r' -> repeat(floor, rest);
            case 'g' -> go(floor, rest);
            case 'l' -> list(state(floor));
            default -> say.accept(HELP);
        }
    }

    private static JobState state(JobFloor floor) {
        return floor.snapshot().job().orElseThrow();
    }

    static Optional<String> nextTick(StepState step) {
        return step.step().ticks().stream()
                .filter(t -> !step.ticked().containsKey(t))
                .findFirst();
    }

    /** The person has done what the step asks. */
    static void done(JobFloor floor, StepState step) throws StoreException, LinkException, InterruptedException {
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
        for (Act one : step.saidWith(act)) {
            act(floor, one);
        }
    }

    /** Reports an act and waits until it shows, or a moment where it changes nothing. */
    static void act(JobFloor floor, Act act) throws StoreException, LinkException, InterruptedException {
        Snapshot before = floor.snapshot();
        floor.act(act);
        for (int i = 0; i < 20; i++) {
            if (!floor.snapshot().job().equals(before.job())) {
                return;
            }
            floor.pass();
        }
    }

    /** Shows what counts as settled, after what was to be set otherwise. */
    private void settings(JobFloor floor, String typed) throws StoreException, LinkException, InterruptedException {
        if (!typed.isEmpty()) {
            try {
                Optional<Act.Settings> act = new TypedSettings(floor.snapshot()).typed(typed);
                if (act.isEmpty()) {
                    say.accept("  nothing is changed: it is so already");
                    return;
                }
                new SettingsChange(0, act.get().from(), act.get().to(), "")
                        .words()
                        .forEach(w -> say.accept("  from now on: " + w + "; the record says so"));
                act(floor, act.get());
            } catch (IllegalArgumentException e) {
                say.accept("  " + e.getMessage());
            }
            return;
        }
        new TypedSettings(floor.snapshot()).lines().forEach(l -> say.accept("  " + l));
    }

    private void pressures(JobFloor floor, StepState step) throws StoreException, LinkException, InterruptedException {
        if (!step.step().inParts()) {
            say.accept("  this step reads no pressures beside something that settles later");
            return;
        }
        if (step.progress() != Progress.ARMED) {
            done(floor, step);
        }
        floor.act(new Act.TakePressures(step.key()));
    }

    /** Such as {@code o2=6.4 co=12 stack=380 from analyser 0815}. */
    void entered(JobFloor floor, StepState step, String line)
            throws StoreException, LinkException, InterruptedException {
        try {
            for (Act act : TypedValues.of(step, floor.snapshot().header(), line)) {
                act(floor, act);
            }
            state(floor).step(step.key()).orElseThrow().typed().values().stream()
                    .sorted((a, b) -> a.role().compareTo(b.role()))
                    .forEach(v -> say.accept("  " + v.role().word() + " " + JobWords.number(v.value()) + " "
                            + v.unit().symbol() + " from " + v.instrument()));
        } catch (IllegalArgumentException e) {
            say.accept("  " + e.getMessage());
        }
    }

    private interface Reasoned {
        Act of(String reason);
    }

    private void withReason(JobFloor floor, String reason, Reasoned act)
            throws StoreException, LinkException, InterruptedException {
        if (reason.isEmpty()) {
            say.accept("  say why, behind the letter");
        } else {
            act(floor, act.of(reason));
        }
    }

    private void meter(JobFloor floor, String key, String rest) {
        Optional<Double> cubicFeet = number(rest);
        if (cubicFeet.isEmpty()) {
            say.accept("  say m and cubic feet, such as m 2");
            return;
        }
        try {
            floor.act(new Act.MeterDial(key, cubicFeet.get()));
        } catch (IllegalArgumentException e) {
            say.accept("  " + e.getMessage());
        }
    }

    private void heat(JobFloor floor, String rest) {
        int space = rest.indexOf(' ');
        try {
            double value = Double.parseDouble(space < 0 ? rest : rest.substring(0, space));
            floor.act(new Act.Heat(new GasHeat(
                    value, 0.01, space < 0 ? "" : rest.substring(space + 1).strip())));
        } catch (IllegalArgumentException e) {
            say.accept(
                    "  say h, a figure and who says so, such as h 1028 the supplier's letter (" + e.getMessage() + ")");
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
            say.accept("  no finished step is called \"" + key + "\"; l lists them");
        }
    }

    /** Arms another step, which then is the one at hand. */
    private void go(JobFloor floor, String key) throws StoreException, LinkException, InterruptedException {
        Optional<StepState> other = state(floor).step(key).filter(s -> !s.done());
        if (other.isEmpty()) {
            say.accept("  no open step is called \"" + key + "\"; l lists them");
        } else if (other.get().step().kind() == StepKind.LEFT) {
            act(floor, new Act.Adjust(key));
        } else {
            act(floor, new Act.Confirm(key));
        }
    }

    private void list(JobState job) {
        job.steps()
                .forEach(s -> say.accept(String.format(
                        Locale.ROOT,
                        "  %-24s %s, %s",
                        s.key(),
                        s.step().title(),
                        s.progress().name().toLowerCase(Locale.ROOT))));
    }
}
