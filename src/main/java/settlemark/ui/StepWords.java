package settlemark.ui;

import java.util.Locale;
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
                    open.step().title() + (open.superseded() ? ": the old reading, done again" : ": as it was read");
                case SKIPPED -> open.step().title() + ": skipped, " + open.skipReason();
                case WAITING, OPEN, ARMED -> open.step().title() + ": still to come";
            };
        }
        if (scene.adjusting()) {
            return scene.stage().map(StepWords::adjusting).orElse(open.step().instruction());
        }
        if (scene.ticking()) {
            return "Close up: tick each when it is done";
        }
        return scene.armed() ? armed(scene) : open.step().instruction();
    }

    private static String adjusting(StagePlate stage) {
        return Numbers.capital(stage.name()) + ", adjusting: bring the manifold to "
                + String.format(Locale.ROOT, "%.2f ", stage.manifoldTarget())
                + stage.unit().symbol();
    }

    private static String armed(Scene scene) {
        String stage = scene.stage().map(s -> Numbers.capital(s.name())).orElse("");
        String what = switch (scene.kind()) {
            case ZERO, CLOSE -> "Ports open to air";
            case LOCK_UP -> "Nothing firing";
            case THIS_APPLIANCE, ALL_APPLIANCES ->
                Numbers.capital(scene.open().step().name());
            case HOLD -> "Inlet trapped";
            case FOUND -> stage + ", as found";
            case LEFT -> stage + ", cap on";
            case SHUT -> "Valve shut";
            case PLATE, PROBES, CLOCK, STATICS, COMBUSTION, CHECK, RECORD ->
                scene.open().step().title();
        };
        if (scene.kind() == StepKind.HOLD) {
            return what + ": hands off while it is watched";
        }
        return what + ": hands off until " + all(scene.open().step().required().size()) + " settled";
    }

    /** For instance {@code all four have}. */
    static String all(int count) {
        return switch (count) {
            case 1 -> "it has";
            case 2 -> "both have";
            case 3 -> "all three have";
            case 4 -> "all four have";
            default -> "all " + count + " have";
        };
    }

    /** What must not be overlooked: nothing is stored, or will soon be, or what was just done was refused. */
    static String standing(Scene now) {
        String failure = Stream.concat(
                        Stream.of(now.snapshot().stored().failure()),
                        now.job().notices().stream()
                                .filter(n -> n.seen() && !n.cured())
                                .map(SafetyNotice::words))
                .filter(w -> !w.isEmpty())
                .findFirst()
                .orElse("");
        boolean refused = now.live() && now.open().progress() == Progress.OPEN && !now.ticking();
        String remark = refused ? Remark.of(now.open()) : "";
        return !failure.isEmpty()
                ? failure
                : !remark.isEmpty() ? remark : now.snapshot().stored().warning();
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
            case CLOCK -> "Clock " + step.stage();
            case FOUND -> "Found " + step.stage();
            case LEFT -> "Left " + step.stage();
            case COMBUSTION -> "Flue " + step.stage();
            default -> Numbers.capital(step.name());
        };
    }
}
