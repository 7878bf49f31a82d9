package settlemark.ui;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import settlemark.job.StepKind;
import settlemark.measure.Role;
import settlemark.session.DemoHands;
import settlemark.session.Desk;

/**
 * A whole job done by pressing what the window offers, and counted: every press is done by the button that stands there
 * for it, so that a key and a pointer need as many. What hands do at the furnace (the screw, the analyser) is no press.
 */
public final class PressedJob {
    /** Session time passes. */
    public interface Passing {
        void pass() throws Exception;
    }

    private static final int MOST_LOOKS = 60_000;

    private final Controller controller;
    private final Desk desk;
    private final DemoHands hands;
    private final Passing time;
    private final Map<String, Integer> presses = new LinkedHashMap<>();
    private final List<String> told = new ArrayList<>();
    private final Set<String> refused = new TreeSet<>();
    private double turns = -1;

    private PressedJob(Desk desk, DemoHands hands, Passing time) {
        this.desk = desk;
        this.hands = hands;
        this.time = time;
        controller = new Controller(
                Painting.look(), desk, Optional.of(hands), Optional.empty(), new FakeHost(), () -> {}, () -> {});
        controller.pane().setSize(1280, 720);
    }

    /**
     * Presses for each step until the record is asked for, the name as one of them.
     *
     * @param refused gets why the meter could not be clocked yet, as the button said
     */
    public static Map<String, Integer> run(Desk desk, DemoHands hands, Passing time, Set<String> refused) {
        return DeskPaneTest.onEdt(() -> {
            PressedJob job = new PressedJob(desk, hands, time);
            job.run();
            refused.addAll(job.refused);
            return job.presses;
        });
    }

    private void run() throws Exception {
        for (int look = 0; look < MOST_LOOKS; look++) {
            controller.show(desk.snapshot(), true);
            Scene scene = Objects.requireNonNull(controller.scene());
            if (scene.job().complete()) {
                return;
            }
            step(scene);
            // The presses of the meter must not be late.
            for (int i = 0; i < (scene.kind() == StepKind.CLOCK ? 1 : 5); i++) {
                time.pass();
            }
        }
        throw new AssertionError("the job does not end: " + presses + ", told " + told);
    }

    private void step(Scene scene) {
        if (scene.adjusting()) {
            adjust(scene);
        } else if (scene.kind() == StepKind.CLOCK) {
            clock(scene);
        } else if (scene.kind() == StepKind.RECORD && scene.job().person().isBlank()) {
            count(scene);
            desk.act(new settlemark.job.Act.Person("R. Moss"));
        } else if (Choices.primary(scene).available()) {
            press(scene, Deed.PRIMARY);
        }
    }

    /** Half of what is missing at a time, once the pressure stands. */
    private void adjust(Scene scene) {
        var manifold = scene.snapshot().channel(Role.MANIFOLD).orElseThrow();
        double target = scene.stage().orElseThrow().manifoldTarget();
        if (!manifold.settle().settled()) {
            return;
        }
        double missing = target - manifold.value();
        if (Math.abs(missing) <= 0.03) {
            press(scene, Deed.PRIMARY);
        } else {
            DemoActs.turn(hands, scene.open(), missing > 0 ? 0.05 : -0.05);
        }
    }

    private void clock(Scene scene) {
        var clocking = scene.open().clocking();
        double now = Math.floor(hands.meterCubicFeet() / clocking.dialCubicFeet());
        boolean passed = turns >= 0 && now > turns;
        turns = now;
        if (!Choices.primary(scene).available()) {
            refused.add(Choices.primary(scene).why());
        }
        boolean enough = clocking.running().map(r -> r.turns() >= 2).orElse(false);
        if (enough) {
            press(scene, Deed.ENTER);
        } else if (passed && Choices.primary(scene).available()) {
            press(scene, Deed.PRIMARY);
        }
    }

    private void press(Scene scene, Deed deed) {
        ActButton button = Painting.visible(controller.pane().buttons(), ActButton.class).stream()
                .filter(b -> b.choice().deed() == deed && b.isEnabled())
                .findFirst()
                .orElseThrow(() -> new AssertionError(
                        "no button for " + deed + " in " + scene.open().key()));
        count(scene);
        button.doClick(0);
    }

    private void count(Scene scene) {
        presses.merge(scene.open().key(), 1, Integer::sum);
    }
}
