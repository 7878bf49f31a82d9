package settlemark.link;

import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;

/** Waits for a condition, and says what did not come true. */
final class Await {
    private static final long STEP_NANOS = 2_000_000;

    private Await() {}

    /** Returns how long it took, in milliseconds. */
    static long until(String what, long limitMillis, BooleanSupplier condition) {
        long start = System.nanoTime();
        while (!condition.getAsBoolean()) {
            if (System.nanoTime() - start > limitMillis * 1_000_000) {
                throw new AssertionError(what + ": not within " + limitMillis + " ms");
            }
            LockSupport.parkNanos(STEP_NANOS);
        }
        return (System.nanoTime() - start) / 1_000_000;
    }
}
