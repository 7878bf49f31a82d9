package settlemark.exchange;

import settlemark.profile.Poll;

/** A message that is asked for, and how that goes. */
final class Polled {
    private static final long FIRST_PAUSE_NANOS = 5_000_000_000L;
    private static final long LAST_PAUSE_NANOS = 60_000_000_000L;

    final int input;
    final Question question;
    final Poll poll;
    long dueNanos;
    boolean asked;
    /** It was not answered the last time, after all tries. */
    boolean failing;
    /** That it failed, unsaid until it is known whether the device answers anything else. */
    String unsaid = "";
    /** What was last said of an answer that was refused or wrong, so that it is said once. */
    String said = "";

    private long pauseNanos = FIRST_PAUSE_NANOS;

    Polled(int input, Question question, Poll poll) {
        this.input = input;
        this.question = question;
        this.poll = poll;
    }

    void start(long nowNanos) {
        asked = false;
        dueNanos = nowNanos;
    }

    /** It went unanswered while others were answered: asked less and less often, because each time costs everybody. */
    void rest(long nowNanos) {
        dueNanos = Math.max(nowNanos + pauseNanos, nextNanos(nowNanos));
        pauseNanos = Math.min(2 * pauseNanos, LAST_PAUSE_NANOS);
    }

    void answered() {
        failing = false;
        unsaid = "";
        pauseNanos = FIRST_PAUSE_NANOS;
    }

    boolean done() {
        return asked && poll.isOnce();
    }

    /** The next time in step with the ones before; now where that has passed. */
    void next(long nowNanos) {
        asked = true;
        dueNanos = nextNanos(nowNanos);
    }

    long nextNanos(long nowNanos) {
        return poll.isOnce() ? nowNanos : Math.max(nowNanos, dueNanos + Math.round(poll.periodSeconds() * 1e9));
    }
}
