package settlemark.ui;

/**
 * When a window looks for what is new: far oftener than anything new comes, so that it waits little for the screen. What
 * is new comes ten times a second; digits change 3.6 times at most.
 */
final class Looks {
    /** Between two looks. */
    static final int MILLIS = 20;

    /** Each fifth is a regular one, for what changes by itself. */
    private static final int REGULAR = 5;

    private static final long DIGITS_NANOS = 280_000_000L;
    private int looks;
    private long digitsAt = Long.MIN_VALUE;
    private boolean digitsDue = true;

    /** One look; returns whether it is a regular one. */
    boolean look() {
        return looks++ % REGULAR == 0;
    }

    /** Something new has come. */
    void news() {
        digitsDue = true;
    }

    /** Whether digits have something new to show, and may show it. */
    boolean digits(long nowNanos) {
        return digitsDue && (digitsAt == Long.MIN_VALUE || nowNanos - digitsAt >= DIGITS_NANOS);
    }

    /** Digits were shown. */
    void shown(long nowNanos) {
        digitsAt = nowNanos;
        digitsDue = false;
    }
}
