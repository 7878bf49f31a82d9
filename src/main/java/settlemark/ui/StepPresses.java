package settlemark.ui;

import java.util.ArrayList;
import java.util.List;
import settlemark.job.Act;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.session.Desk;

/** Turns a press at the open step into the act that it reports; in the demo, the hands do it first. */
final class StepPresses {
    private final Desk desk;
    private final DemoFollower demo;

    StepPresses(Desk desk, DemoFollower demo) {
        this.desk = desk;
        this.demo = demo;
    }

    /** What the large button means at this step, other than a step of typed values. */
    void press(Scene now) {
        StepState open = now.open();
        if (now.adjusting()) {
            demo.pressed(open);
            open.saidWith(new Act.CapOn(open.key())).forEach(desk::act);
        } else if (now.ticking()) {
            tick(now, nextTick(open));
        } else if (now.kind() == StepKind.CLOCK) {
            desk.act(new Act.PointerAtMark(open.key()));
        } else {
            demo.pressed(open);
            open.saidWith(new Act.Confirm(open.key())).forEach(desk::act);
        }
    }

    /**
     * Values that were typed, and then that this is all of them. Where the person typed nothing, the demo's analyser did.
     *
     * @throws IllegalArgumentException where something typed is no value, with the reason
     */
    void typed(Scene now, TypedFace face) {
        StepState open = now.open();
        demo.pressed(open);
        List<Act> acts = new ArrayList<>(face.typed(now));
        if (acts.isEmpty() && open.typed().isEmpty()) {
            acts.addAll(demo.analysis(open));
        }
        acts.addAll(open.saidWith(new Act.Confirm(open.key())));
        acts.forEach(desk::act);
    }

    private static int nextTick(StepState open) {
        List<String> items = open.step().ticks();
        for (int i = 0; i < items.size(); i++) {
            if (!open.ticked().containsKey(items.get(i))) {
                return i;
            }
        }
        return items.size();
    }

    /** Ticks an item, or takes the tick back; a number that the step has not does nothing. */
    void tick(Scene now, int number) {
        List<String> items = now.open().step().ticks();
        if (number < items.size()) {
            String item = items.get(number);
            boolean done = now.open().ticked().containsKey(item);
            desk.act(new Act.Tick(now.open().key(), item, !done));
        }
    }

    /** The next of the customary dials of the meter. */
    void dial(Scene now) {
        double next = ClockChoices.next(now.open().clocking().dialCubicFeet());
        desk.act(new Act.MeterDial(now.open().key(), next));
    }
}
