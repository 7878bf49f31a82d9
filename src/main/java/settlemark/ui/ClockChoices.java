package settlemark.ui;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import settlemark.job.Clocking;
import settlemark.job.StagePlate;
import settlemark.job.StepKind;
import settlemark.measure.Role;
import settlemark.session.ChannelView;

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
        String early = running(scene) ? "" : early(scene);
        if (!early.isEmpty()) {
            return Choice.no(Deed.PRIMARY, Words.told(scene.open().step().press()), early);
        }
        String hint = clocking.running()
                .map(run -> Words.say("counts turn {0} of this run", run.turns() + 1))
                .orElse(Words.say("begins run {0}", clocking.counting().size() + 1));
        return Choice.of(Deed.PRIMARY, Words.told(scene.open().step().press()), hint);
    }

    /** Why a run that began now would not count; empty where it would, or where no probe sees the manifold. */
    private static String early(Scene scene) {
        Optional<ChannelView> manifold =
                scene.snapshot().channel(Role.MANIFOLD).filter(m -> !m.stale() && Double.isFinite(m.value()));
        Optional<StagePlate> stage = scene.stage();
        if (manifold.isEmpty()) {
            return "";
        }
        if (!manifold.get().settle().settled()) {
            String word = Gap.of(manifold.get(), scene.snapshot().timeNanos()).word();
            return Words.say("manifold {0}: a run would not count yet", word);
        }
        boolean burns = stage.map(s -> Clocking.burnsOn(
                        s,
                        manifold.get().unit().to(s.unit()).apply(manifold.get().value())))
                .orElse(true);
        return burns
                ? ""
                : Words.say(
                        "manifold at {0} {1}, which is not {2}: a run would not count",
                        Numbers.fixed(manifold.get().value(), Gap.decimals(manifold.get())),
                        manifold.get().unit().symbol(),
                        Words.told(stage.orElseThrow().name()));
    }

    static List<Choice> others(Scene scene) {
        List<Choice> choices = new ArrayList<>();
        if (here(scene)) {
            boolean running = running(scene);
            boolean turned =
                    scene.open().clocking().running().filter(r -> r.turns() > 0).isPresent();
            choices.add(
                    turned
                            ? Choice.of(Deed.ENTER, Words.say("End run"))
                            : Choice.no(
                                    Deed.ENTER,
                                    Words.say("End run"),
                                    running ? Words.say("after a whole turn") : Words.say("no run")));
            choices.add(
                    running
                            ? Choice.of(Deed.UNMARK, Words.say("Undo"))
                            : Choice.no(Deed.UNMARK, Words.say("Undo"), Words.say("no run")));
            choices.add(
                    running
                            ? Choice.of(Deed.REPEAT, Words.say("Again"))
                            : Choice.no(Deed.REPEAT, Words.say("Again"), Words.say("no run")));
            choices.add(Choice.of(Deed.DIAL, Words.say("Dial")));
        }
        return choices;
    }

    /** Why a deed of clocking cannot be done now; empty where it can. */
    static String why(Deed deed, Scene scene) {
        if (!here(scene)) {
            return Words.say("This step does not clock the meter");
        }
        return deed == Deed.UNMARK && !running(scene)
                ? Words.say("No run goes on that a press could be taken back from")
                : "";
    }

    /** The dial after this one. */
    static double next(double cubicFeet) {
        int at = DIALS.indexOf(cubicFeet);
        return DIALS.get((at + 1) % DIALS.size());
    }
}
