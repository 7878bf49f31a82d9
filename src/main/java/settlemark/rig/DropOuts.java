package settlemark.rig;

import java.util.Random;

/** Loses frames now and then, about every two minutes at ten a second, never more than ten in a row. */
final class DropOuts {
    static final int LONGEST_FRAMES = 10;
    private static final double STARTS_PER_FRAME = 1.0 / 1200;

    private final Random random;
    private int stillToLose;

    DropOuts(Random random) {
        this.random = random;
    }

    /** Whether the next frame is lost. */
    boolean lost() {
        if (stillToLose > 0) {
            stillToLose--;
            // One whole frame at least comes between two drop-outs.
            return stillToLose > 0;
        }
        if (random.nextDouble() < STARTS_PER_FRAME) {
            stillToLose = 1 + random.nextInt(LONGEST_FRAMES);
            return true;
        }
        return false;
    }
}
