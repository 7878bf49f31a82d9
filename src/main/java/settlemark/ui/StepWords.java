package settlemark.ui;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import settlemark.job.PlanStep;
import settlemark.job.Progress;
import settlemark.job.SafetyNotice;
import settlemark.job.StagePlate;
import settlemark.job.StepKind;
import settlemark.job.StepState;

/** The step in words, as it stands over the strip. */
final class StepWords {
    private StepWords() {}

    static String of(Scene scene) {
        StepState open = scene.open();
        if (!scene.live()) {
            return switch (open.progress()) {
                case TAKEN ->
                    Words.told(open.step().title())
                            + (open.superseded()
                                    ? Words.say(": the old reading, done again")
                                    : Words.say(": as it was read"));
                case SKIPPED ->
                    Words.say("{0}: skipped, {1}", Words.told(open.step().title()), open.skipReason());
                case WAITING, OPEN, ARMED ->
                    Words.say("{0}: still to come", Words.told(open.step().title()));
            };
        }
        if (scene.adjusting()) {
            return scene.stage()
                    .map(StepWords::adjusting)
                    .orElse(Words.told(open.step().instruction()));
        }
        if (scene.ticking()) {
            return Words.say("Close up: tick each when it is done");
        }
        return scene.armed() ? armed(scene) : Words.told(open.step().instruction());
    }

    /** The caution, and what the press says besides, or has said. */
    static String beneath(Scene scene) {
        StepState open = scene.open();
        String caution = Words.told(open.step().caution());
        if (!scene.live() || open.done() || open.step().ticks().isEmpty() || !open.ticksWithPress()) {
            return caution;
        }
        List<String> more = open.pressTicks();
        if (!scene.armed()) {
            return more.isEmpty() ? caution : caution + " " + Words.say("The press says too: {0}.", listed(more));
        }
        List<String> said =
                open.step().ticks().stream().filter(t -> !more.contains(t)).toList();
        return caution
                + (said.isEmpty()
                        ? ""
                        : " "
                                + Words.say(
                                        "Said with the press: {0}. 1 to {1} takes one back.",
                                        listed(said), count(open)))
                + (more.isEmpty() ? "" : " " + Words.say("Not said: {0}.", listed(more)));
    }

    private static int count(StepState open) {
        return Math.min(3, open.step().ticks().size());
    }

    private static String listed(List<String> items) {
        return items.stream().map(Words::told).collect(Collectors.joining("; "));
    }

    private static String adjusting(StagePlate stage) {
        return Words.say(
                "{0}, adjusting: bring the manifold to {1}{2}",
                Numbers.capital(Words.told(stage.name())),
                String.format(Locale.ROOT, "%.2f ", stage.manifoldTarget()),
                stage.unit().symbol());
    }

    private static String armed(Scene scene) {
        String stage =
                scene.stage().map(s -> Numbers.capital(Words.told(s.name()))).orElse("");
        String what = switch (scene.kind()) {
            case ZERO, CLOSE -> Words.say("Ports open to air");
            case LOCK_UP -> Words.say("Nothing firing");
            case THIS_APPLIANCE, ALL_APPLIANCES ->
                Numbers.capital(Words.told(scene.open().step().name()));
            case HOLD -> Words.say("Inlet trapped");
            case FOUND -> Words.say("{0}, as found", stage);
            case LEFT -> Words.say("{0}, cap on", stage);
            case SHUT -> Words.say("Valve shut");
            case PLATE, PROBES, CLOCK, STATICS, COMBUSTION, CHECK, RECORD ->
                Words.told(scene.open().step().title());
        };
        if (scene.kind() == StepKind.HOLD) {
            return Words.say("{0}: hands off while it is watched", what);
        }
        return Words.say(
                "{0}: hands off until {1} settled",
                what, all(scene.open().step().required().size()));
    }

    /** For instance {@code all four have}. */
    static String all(int count) {
        return switch (count) {
            case 1 -> Words.say("it has");
            case 2 -> Words.say("both have");
            case 3 -> Words.say("all three have");
            case 4 -> Words.say("all four have");
            default -> Words.say("all {0} have", count);
        };
    }

    /** What must not be overlooked: nothing is stored, or will soon be, or what was just done was refused. */
    static String standing(Scene now) {
        String failure = Stream.concat(
                        Stream.of(now.snapshot().stored().failure()),
                        now.job().notices().stream()
                                .filter(n -> n.seen() && !n.cured())
                                .map(SafetyNotice::words))
                .map(Words::told)
                .filter(w -> !w.isEmpty())
                .findFirst()
                .orElse("");
        boolean refused = now.live() && now.open().progress() == Progress.OPEN && !now.ticking();
        String remark = refused ? Remark.of(now.open()) : "";
        return !failure.isEmpty()
                ? failure
                : !remark.isEmpty()
                        ? remark
                        : Words.told(now.snapshot().stored().warning());
    }

    /** Short name of a step for a narrow column, such as {@code Found low}. */
    static String narrow(StepState step) {
        String again = step.key().contains("#")
                ? step.key().substring(step.key().indexOf('#')).replace("#", " ")
                : "";
        return narrow(step.step()) + again;
    }

    /** The same of a step that is still to come. */
    static String narrow(PlanStep step) {
        return switch (step.kind()) {
            case CLOCK -> Words.say("Clock {0}", Words.told(step.stage()));
            case FOUND -> Words.say("Found {0}", Words.told(step.stage()));
            case LEFT -> Words.say("Left {0}", Words.told(step.stage()));
            case COMBUSTION -> Words.say("Flue {0}", Words.told(step.stage()));
            default -> Numbers.capital(Words.told(step.name()));
        };
    }
}
