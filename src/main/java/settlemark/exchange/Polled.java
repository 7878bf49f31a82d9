package settlemark.exchange;

import settlemark.profile.Poll;

/** A message that is asked for, and how that goes. */
final class Polled {
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

    Polled(int input, Question question, Poll poll) {
        this.input = input;
        this.question = question;
        this.poll = poll;
    }

    void start(long nowNanos) {
        asked = false;
        dueNanos = nowNanos;
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
