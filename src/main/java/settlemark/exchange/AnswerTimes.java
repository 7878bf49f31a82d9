package settlemark.exchange;

import java.util.Arrays;
import settlemark.profile.Poll;

/**
 * How long a device takes to answer, from its last hundred answers, late ones included. Where the profile leaves the
 * time-out open, it is three times what 99 of 100 answers take, half a second at least, ten seconds at most.
 */
final class AnswerTimes {
    private static final int KEPT = 100;
    private static final int ENOUGH = 20;
    private static final long LEAST_NANOS = 500_000_000L;
    private static final long MOST_NANOS = 10_000_000_000L;
    private static final long DEFAULT_NANOS = (long) (Poll.DEFAULT_TIME_OUT_SECONDS * 1e9);

    private final long[] nanos = new long[KEPT];
    private long count;

    void add(long latencyNanos) {
        nanos[(int) (count++ % KEPT)] = Math.max(0, latencyNanos);
    }

    long timeOutNanos(Poll poll) {
        long said = Math.round(poll.timeOutSeconds() * 1e9);
        if (said != DEFAULT_NANOS) {
            return said;
        }
        long learned = Math.min(MOST_NANOS, 3 * mostTake());
        return Math.max(count < ENOUGH ? DEFAULT_NANOS : LEAST_NANOS, learned);
    }

    /** The longest of those kept, 0 where there is none. */
    long worstNanos() {
        return Arrays.stream(nanos).max().orElse(0);
    }

    private long mostTake() {
        int kept = (int) Math.min(count, KEPT);
        if (kept == 0) {
            return 0;
        }
        long[] sorted = Arrays.copyOf(nanos, kept);
        Arrays.sort(sorted);
        return sorted[(int) Math.ceil(0.99 * kept) - 1];
    }
}
