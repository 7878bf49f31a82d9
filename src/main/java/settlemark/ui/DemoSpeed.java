package settlemark.ui;

import java.util.List;

/** How much faster than real time the demo runs. Safe to call from any thread; never waits. */
public interface DemoSpeed {
    /** The choices in order, beginning with 1. */
    List<Integer> choices();

    /** Times real time. */
    int speed();

    /** @param speed one of the choices */
    void speed(int speed);

    /** Goes on at the next of the choices, after the last at the first. */
    default void next() {
        List<Integer> all = choices();
        speed(all.get((all.indexOf(speed()) + 1) % all.size()));
    }
}
