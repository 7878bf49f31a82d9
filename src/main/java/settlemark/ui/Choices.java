package settlemark.ui;

import java.util.ArrayList;
import java.util.List;
import settlemark.job.Progress;
import settlemark.job.StepKind;
import settlemark.session.ChannelView;

/** What can be done in a scene: the primary act and the buttons beside it. */
final class Choices {
    private Choices() {}

    /** The large button. Its hint says what the press does, or why there is nothing to press. */
    static Choice primary(Scene scene) {
        if (scene.job().complete()) {
            return finished(scene);
        }
        if (!scene.live()) {
            String now = scene.job()
                    .currentStep()
                    .map(s -> Words.told(s.step().title()))
                    .orElse("");
            return Choice.of(Deed.NOW, Words.say("Back to now"), now);
        }
        if (scene.adjusting()) {
            return Choice.of(
                    Deed.PRIMARY,
                    Words.told(scene.open().step().press()),
                    Words.say("closes adjusting, starts the recheck"));
        }
        if (scene.armed()) {
            return armed(scene);
        }
        if (scene.ticking()) {
            return tick(scene);
        }
        if (scene.kind() == StepKind.CLOCK) {
            return ClockChoices.primary(scene);
        }
        return scene.kind() == StepKind.RECORD ? record(scene) : press(scene);
    }

    private static Choice press(Scene scene) {
        String hint = switch (scene.kind()) {
            case PLATE -> Words.say("every limit comes from it");
            case PROBES -> Words.say("each channel shows its own value");
            case ZERO, LOCK_UP, THIS_APPLIANCE, ALL_APPLIANCES, FOUND, LEFT, SHUT, CLOSE ->
                Words.say(
                        "arms the reading; it takes itself when {0} settled",
                        StepWords.all(scene.open().step().required().size()));
            case HOLD -> Words.say("arms the watch; it reads at its start and at its end");
            case STATICS, COMBUSTION -> Words.say("takes what is typed, and what probes give once it has settled");
            case CLOCK, CHECK, RECORD -> "";
        };
        return Choice.of(Deed.PRIMARY, Words.told(scene.open().step().press()), hint);
    }

    private static Choice armed(Scene scene) {
        int all = scene.open().step().required().size();
        long settled = scene.settledCount();
        // What moved before stands on the chart; here is room for what is waited for.
        String waiting = Words.told(scene.open().waitingFor().replaceFirst(" \\(.*", ""));
        if (waiting.isEmpty()) {
            waiting = scene.required().stream()
                    .filter(c -> !Gap.of(c, scene.snapshot().timeNanos()).settled())
                    .findFirst()
                    .map(c -> ", " + Words.told(c.role().word()) + " "
                            + Gap.of(c, scene.snapshot().timeNanos()).word())
                    .orElse("");
            waiting = Words.say("armed: {0} settled{1}", settled, waiting);
        }
        return Choice.no(Deed.PRIMARY, Words.say("Takes itself at {0} of {1}", all, all), waiting);
    }

    private static Choice tick(Scene scene) {
        return scene.open().step().ticks().stream()
                .filter(t -> !scene.open().ticked().containsKey(t))
                .findFirst()
                .map(t -> Choice.of(Deed.PRIMARY, Words.say("Tick: done and seen"), t))
                .orElse(Choice.no(Deed.PRIMARY, Words.say("All ticked"), Words.say("on to the record")));
    }

    private static Choice record(Scene scene) {
        String press = Words.told(scene.open().step().press());
        if (scene.record().making()) {
            return Choice.no(Deed.PRIMARY, press, Words.say("it is being written"));
        }
        if (scene.job().person().isBlank()) {
            return Choice.no(
                    Deed.PRIMARY,
                    press,
                    Words.say("waits for the name of the person: type it at the right, then Enter"));
        }
        long missing = missing(scene);
        return Choice.of(
                Deed.PRIMARY,
                press,
                missing == 0
                        ? Words.say("nothing is missing")
                        : Words.say("incomplete: {0} not taken, and it says so", missing));
    }

    static long missing(Scene scene) {
        return scene.job().missing().stream()
                .filter(s -> s.step().kind() != StepKind.RECORD)
                .count();
    }

    private static Choice finished(Scene scene) {
        if (scene.record().making()) {
            return Choice.no(Deed.PRIMARY, Words.say("The record is being written"), Words.say("a few seconds"));
        }
        if (!scene.record().failure().isEmpty()) {
            return Choice.of(
                    Deed.PRIMARY,
                    Words.say("Make the record again"),
                    Words.told(scene.record().failure()));
        }
        return Choice.of(Deed.CLOSE, Words.say("Close the window"), Words.say("the job is stored"));
    }

    /** The other buttons, from the left. */
    static List<Choice> others(Scene scene) {
        List<Choice> choices = new ArrayList<>();
        scene.job().alarm().ifPresent(n -> choices.add(Choice.of(Deed.SEEN, Words.say("I have seen it"))));
        choices.add(Choice.of(Deed.LEFT, "\u2039"));
        choices.add(Choice.of(Deed.RIGHT, "\u203a"));
        if (scene.adjusting()) {
            choices.add(Choice.of(Deed.SOUND, Words.say("Sound")));
        }
        if (scene.adjusting() && scene.hands().isPresent()) {
            choices.add(Choice.of(Deed.SCREW_UP, Words.say("Screw in"), Words.say("demo")));
            choices.add(Choice.of(Deed.SCREW_DOWN, Words.say("Screw out"), Words.say("demo")));
        }
        if (scene.kind() == StepKind.LEFT && scene.live() && scene.armed()) {
            choices.add(Choice.of(Deed.ADJUST, Words.say("Adjust")));
        }
        choices.addAll(ClockChoices.others(scene));
        if (scene.kind().measuring() && !scene.kind().typed()) {
            choices.add(Choice.of(Deed.FAR_VIEW, Words.say("Far view")));
        }
        if (scene.kind() == StepKind.PROBES && scene.live()) {
            choices.add(Choice.of(Deed.INSTRUMENT, Words.say("Instrument")));
        }
        if (tellsVisits(scene)) {
            choices.add(Choice.of(Deed.VISITS, Words.say("Visits")));
        }
        choices.add(Choice.of(Deed.NOTE, Words.say("Note")));
        choices.add(skip(scene));
        if (scene.live() && scene.armed()) {
            choices.add(Choice.of(Deed.TAKE_NOW, Words.say("Take now")));
            if (pressures(scene)) {
                choices.add(Choice.of(Deed.PRESSURES, Words.say("Pressures")));
            }
        }
        if (repeats(scene)) {
            choices.add(Choice.of(Deed.REPEAT, Words.say("Repeat")));
        }
        return choices;
    }

    /** Whether the pressures of an armed step could be taken before the rest, and have not been. */
    private static boolean pressures(Scene scene) {
        return scene.live()
                && scene.armed()
                && scene.open().step().inParts()
                && scene.open().pressuresTakenNanos() < scene.open().armedNanos();
    }

    /** Where nothing is waited for, and there is something to be told. */
    private static boolean tellsVisits(Scene scene) {
        return !scene.job().visits().isEmpty()
                && (scene.kind() == StepKind.PLATE
                        || scene.kind() == StepKind.CLOSE
                        || scene.kind() == StepKind.RECORD);
    }

    private static boolean repeats(Scene scene) {
        return !scene.live()
                && scene.open().progress() == Progress.TAKEN
                && (scene.kind().measuring() || scene.kind() == StepKind.CLOCK);
    }

    private static Choice skip(Scene scene) {
        if (scene.open().done()) {
            return Choice.no(Deed.SKIP, Words.say("Skip"), Words.say("done already"));
        }
        if (!scene.live()) {
            return Choice.no(Deed.SKIP, Words.say("Skip"), Words.say("comes later"));
        }
        return scene.kind() == StepKind.RECORD || scene.kind() == StepKind.PLATE
                ? Choice.no(Deed.SKIP, Words.say("Skip"), Words.say("needed"))
                : Choice.of(Deed.SKIP, Words.say("Skip"), Words.say("with reason"));
    }

    /** Why a deed cannot be done now; empty where it can. */
    static String why(Deed deed, Scene scene) {
        return switch (deed) {
            case ADJUST ->
                scene.live() && scene.kind() == StepKind.LEFT
                        ? ""
                        : scene.kind() == StepKind.FOUND
                                ? Words.say("As found: touch no screw")
                                : Words.say("There is nothing to adjust in this step");
            case FAR_VIEW ->
                scene.kind().measuring() && !scene.kind().typed()
                        ? ""
                        : Words.say("This step has no reading to show far away");
            case TAKE_NOW ->
                scene.live() && (scene.armed() || ClockChoices.takes(scene))
                        ? ""
                        : Words.say("Nothing is armed that could be taken");
            case PRESSURES ->
                pressures(scene) ? "" : Words.say("No pressures are waited for that could be taken before the rest");
            case VISITS ->
                scene.job().visits().isEmpty() ? Words.say("No earlier visit to this appliance is stored here") : "";
            case SEEN -> scene.job().alarm().isPresent() ? "" : Words.say("There is no safety notice");
            case UNMARK, DIAL, HEAT -> ClockChoices.why(deed, scene);
            case SKIP -> {
                Choice skip = skip(scene);
                yield skip.available() ? "" : Words.told(scene.open().step().title()) + ": " + skip.why();
            }
            case REPEAT ->
                ClockChoices.running(scene) || repeats(scene)
                        ? ""
                        : Words.say("Open a finished reading to do it again");
            case SCREW_UP, SCREW_DOWN, SCREW_UP_MORE, SCREW_DOWN_MORE ->
                scene.adjusting() && scene.hands().isPresent() ? "" : Words.say("The demo screw turns while adjusting");
            case TICK_1, TICK_2, TICK_3 ->
                scene.live() && (scene.ticking() || takesBack(scene)) ? "" : Words.say("There is nothing to tick yet");
            case LOOK, PORT, PAIR -> Words.say("Probes are chosen before the job begins");
            default -> "";
        };
    }

    /** Whether what was said with the press can be taken back. */
    private static boolean takesBack(Scene scene) {
        return scene.armed()
                && scene.open().ticksWithPress()
                && !scene.open().step().ticks().isEmpty();
    }

    /** The channels whose gaps sit in the primary button. */
    static List<ChannelView> gaps(Scene scene) {
        return scene.live() && scene.armed() ? scene.required() : List.of();
    }
}
