package settlemark.exchange;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import settlemark.profile.Step;

/**
 * One question to one device, until it is answered or given up: a poll, or a step of a script.
 */
final class Task {
    final Device device;
    final Question question;
    final @Nullable Polled polled;
    final @Nullable Script script;
    int tries;
    /** What came in place of an answer. */
    String trouble = "";

    private final int mostTries;

    private Task(Device device, Question question, @Nullable Polled polled, @Nullable Script script, int mostTries) {
        this.device = device;
        this.question = question;
        this.polled = polled;
        this.script = script;
        this.mostTries = mostTries;
    }

    /** A device that is lost, or a question that went unanswered, is asked once at a time. */
    static Task of(Device device, Polled polled) {
        boolean known = device.isLost() || polled.failing;
        return new Task(device, polled.question, polled, null, known ? 1 : 1 + polled.poll.retries());
    }

    static Task of(Device device, Script script) {
        Step step = script.step();
        return new Task(device, device.question(step), null, script, 1 + step.retries());
    }

    boolean mayTryAgain() {
        return tries < mostTries;
    }

    long timeOutNanos() {
        return polled != null
                ? device.times.timeOutNanos(polled.poll)
                : Math.round(script().step().timeOutSeconds() * 1e9);
    }

    Script script() {
        return Objects.requireNonNull(script);
    }
}
