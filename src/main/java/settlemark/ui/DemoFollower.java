package settlemark.ui;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.job.Act;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.session.DemoHands;

/**
 * Has the demo's hands go along with the person: they do what a press reports, and call for a stage as soon as its step is
 * the one to adjust or to clock. Without a demo it does nothing.
 */
final class DemoFollower {
    private final Optional<DemoHands> hands;
    private @Nullable String adjustedKey;
    private @Nullable String clockedKey;

    DemoFollower(Optional<DemoHands> hands) {
        this.hands = hands;
    }

    boolean isDemo() {
        return hands.isPresent();
    }

    Optional<DemoHands.State> state() {
        return hands.map(DemoHands::state);
    }

    /** Takes the cap off and calls for the stage, once for each time that a step is come to. */
    void follow(Scene now) {
        if (!now.live()) {
            return;
        }
        String clocking = now.kind() == StepKind.CLOCK ? now.open().key() : null;
        if (clocking != null && !clocking.equals(clockedKey)) {
            pressed(now.open());
        }
        clockedKey = clocking;
        String adjusting = now.adjusting() ? now.open().key() : null;
        if (adjusting != null && !adjusting.equals(adjustedKey)) {
            hands.ifPresent(h -> DemoActs.adjusting(h, now.open()));
        }
        adjustedKey = adjusting;
    }

    void pressed(StepState open) {
        hands.ifPresent(h -> DemoActs.pressed(h, open));
    }

    void turn(StepState open, double turns) {
        hands.ifPresent(h -> DemoActs.turn(h, open, turns));
    }

    /** What the demo's analyser shows, as if it had been typed; empty without one. */
    List<Act> analysis(StepState open) {
        return hands.flatMap(DemoHands::analysis)
                .map(a -> a.acts(open.key(), open.step().required()))
                .orElse(List.of());
    }
}
