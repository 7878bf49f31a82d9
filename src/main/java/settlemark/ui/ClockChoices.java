package settlemark.ui;

import java.util.ArrayList;
import java.util.List;
import settlemark.job.Clocking;
import settlemark.job.StepKind;

/** What can be done while the meter is clocked. */
final class ClockChoices {
    /** Test dials of a house's meter, cubic feet a turn. */
    static final List<Double> DIALS = List.of(0.5, 1.0, 2.0, 5.0);

    private ClockChoices() {}

    /** True while the pointer of the open step is being watched. */
    static boolean running(Scene scene) {
        return here(scene) && scene.open().clocking().running().isPresent();
    }

    private static boolean here(Scene scene) {
        return scene.live() && scene.kind() == StepKind.CLOCK;
    }

    /** Whether there is a run to take though the runs do not agree. */
    static boolean takes(Scene scene) {
        return here(scene) && !scene.open().clocking().counting().isEmpty();
    }

    static Choice primary(Scene scene) {
        Clocking clocking = scene.open().clocking();
        String hint = clocking.running()
                .map(run -> "counts turn " + (run.turns() + 1) + " of this run")
                .orElse("begins run " + (clocking.counting().size() + 1));
        return Choice.of(Deed.PRIMARY, scene.open().step().press(), hint);
    }

    static List<Choice> others(Scene scene) {
        List<Choice> choices = new ArrayList<>();
        if (here(scene)) {
            boolean running = running(scene);
            boolean turned =
                    scene.open().clocking().running().filter(r -> r.turns() > 0).isPresent();
            choices.add(
                    turned
                            ? Choice.of(Deed.ENTER, "End run")
                            : Choice.no(Deed.ENTER, "End run", running ? "after a whole turn" : "no run"));
            choices.add(running ? Choice.of(Deed.UNMARK, "Undo") : Choice.no(Deed.UNMARK, "Undo", "no run"));
            choices.add(running ? Choice.of(Deed.REPEAT, "Again") : Choice.no(Deed.REPEAT, "Again", "no run"));
            choices.add(Choice.of(Deed.DIAL, "Dial"));
        }
        return choices;
    }

    /** Why a deed of clocking cannot be done now; empty where it can. */
    static String why(Deed deed, Scene scene) {
        if (!here(scene)) {
            return "This step does not clock the meter";
        }
        return deed == Deed.UNMARK && !running(scene) ? "No run goes on that a press could be taken back from" : "";
    }

    /** The dial after this one. */
    static double next(double cubicFeet) {
        int at = DIALS.indexOf(cubicFeet);
        return DIALS.get((at + 1) % DIALS.size());
    }
}
