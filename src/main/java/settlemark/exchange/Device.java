package settlemark.exchange;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Chunk;
import settlemark.profile.Action;
import settlemark.profile.ByteText;
import settlemark.profile.Link;
import settlemark.profile.Profile;
import settlemark.profile.Source;
import settlemark.profile.Step;

/** One device on the line: what it has to be asked, and how it stands. */
final class Device {
    private static final long FIRST_PAUSE_NANOS = 1_000_000_000L;
    private static final long LAST_PAUSE_NANOS = 4_000_000_000L;

    final AnswerTimes times = new AnswerTimes();
    final Unanswered unanswered = new Unanswered();
    final ExchangeListener listener;
    /** Input of bytes that come unasked, {@link Chunk#STRAY} where the profile has none. */
    final int unaskedInput;
    /** Counts up with each question on the line, so that nobody is passed over. */
    long servedAt;

    boolean lateSaid;

    private final Profile profile;
    private final int unit;
    private final List<Polled> polls = new ArrayList<>();
    private final Deque<Script> scripts = new ArrayDeque<>();
    private long notBeforeNanos;
    private long pauseNanos = FIRST_PAUSE_NANOS;
    private long doubtUntilNanos = Long.MIN_VALUE;
    private @Nullable Polled lastFailed;
    private boolean lost;
    private boolean lostAtStart;

    /** @param unit its address on a Modbus line, else 0 */
    Device(Profile profile, int unit, ExchangeListener listener) {
        this.profile = profile;
        this.unit = unit;
        this.listener = listener;
        int unasked = Chunk.STRAY;
        for (int i = 0; i < profile.messages().size(); i++) {
            Source source = profile.messages().get(i).source();
            if (source instanceof Source.Registers registers) {
                polls.add(new Polled(i, new ReadRegisters(unit, registers), registers.poll()));
            } else if (source instanceof Source.Answer answer) {
                polls.add(new Polled(i, AskedMessage.of(profile.messages().get(i), answer.request()), answer.poll()));
            } else if (source instanceof Source.Unasked && unasked == Chunk.STRAY) {
                unasked = i;
            }
        }
        this.unaskedInput = unasked;
    }

    /** Unit that a profile's device has on its line, 0 where it has none. */
    static int unit(Profile profile, int asked) {
        boolean modbus = profile.link().filter(l -> l instanceof Link.ModbusRtu).isPresent();
        if (!modbus && asked != 0) {
            throw new IllegalArgumentException(
                    "profile " + profile.id() + " is not for Modbus: its address has no unit, got @" + asked);
        }
        return asked == 0 && modbus ? ((Link.ModbusRtu) profile.link().orElseThrow()).unit() : asked;
    }

    boolean isModbus() {
        return unit != 0;
    }

    boolean asks() {
        return !polls.isEmpty()
                || !profile.startUp().isEmpty()
                || !profile.actions().isEmpty();
    }

    String name() {
        return isModbus() ? "unit " + unit : "the device";
    }

    boolean isLost() {
        return lost;
    }

    Question question(Step step) {
        Optional<Step.Send> send = step.send();
        if (send.isPresent() && send.get() instanceof Step.SetRegisters registers) {
            return new WriteRegisters(unit, registers);
        }
        if (send.isPresent() && send.get() instanceof Step.Write) {
            throw new IllegalArgumentException("a serial line has no characteristics to write to");
        }
        return new StepQuestion(send.map(s -> ((Step.Bytes) s).bytes()).orElse(ByteText.EMPTY), step.expect());
    }

    /** From the beginning: start-up, then all polls at once. */
    void start(long nowNanos) {
        notBeforeNanos = nowNanos;
        doubtUntilNanos = Long.MIN_VALUE;
        pauseNanos = FIRST_PAUSE_NANOS;
        lastFailed = null;
        unanswered.forget();
        scripts.removeIf(s -> s.startUp);
        if (!profile.startUp().isEmpty()) {
            scripts.addFirst(new Script("start-up", true, profile.startUp()));
        }
        polls.forEach(p -> p.start(nowNanos));
    }

    /** @throws IllegalArgumentException where the profile has no such action */
    void act(String actionId) {
        Action action = profile.actions().stream()
                .filter(a -> a.id().equals(actionId))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("profile " + profile.id() + " has no action \""
                        + actionId + "\"; it has "
                        + profile.actions().stream().map(Action::id).toList()));
        scripts.addLast(new Script(action.label(), false, action.steps()));
    }

    /** When it has to be asked next; {@link Long#MAX_VALUE} for never. */
    long dueNanos() {
        if (!scripts.isEmpty()) {
            return notBeforeNanos;
        }
        Polled next = nextPoll();
        return next == null ? Long.MAX_VALUE : Math.max(notBeforeNanos, next.dueNanos);
    }

    /** What it has to be asked next; only where something is due. */
    Task nextTask() {
        Script script = scripts.peekFirst();
        return script != null ? Task.of(this, script) : Task.of(this, Objects.requireNonNull(nextPoll()));
    }

    private @Nullable Polled nextPoll() {
        // The same question again: then it does not matter which of them is answered first.
        Polled next = lost ? lastFailed : null;
        if (next != null) {
            return next;
        }
        for (Polled polled : polls) {
            if (!polled.done() && (next == null || polled.dueNanos < next.dueNanos)) {
                next = polled;
            }
        }
        return next;
    }

    /** Until then, what comes may answer an earlier question. */
    void doubtUntil(long nanos) {
        doubtUntilNanos = nanos;
        holdUntil(nanos);
    }

    boolean inDoubt(long nowNanos) {
        return nowNanos < doubtUntilNanos || !unanswered.isEmpty(nowNanos);
    }

    void holdUntil(long nanos) {
        notBeforeNanos = Math.max(notBeforeNanos, nanos);
    }

    /** A poll was answered, well or not: the device is there. */
    void answered(Polled polled, long nowNanos) {
        polled.answered();
        lastFailed = null;
        for (Polled other : polls) {
            if (!other.unsaid.isEmpty()) {
                complain(other, nowNanos, other.unsaid);
                other.unsaid = "";
            }
        }
        pauseNanos = FIRST_PAUSE_NANOS;
        polled.next(nowNanos);
        if (lost && !lostAtStart) {
            lost = false;
            listener.back(nowNanos, name() + " answers again");
        }
    }

    /** What the device says to a question that it does not answer well; told once until that changes. */
    void complain(Polled polled, long nowNanos, String words) {
        if (!polled.said.equals(words)) {
            polled.said = words;
            if (!words.isEmpty()) {
                listener.noted(nowNanos, words);
            }
        }
    }

    /** A poll was not answered, after all tries. */
    void unansweredPoll(Task task, Polled polled, long nowNanos) {
        polled.failing = true;
        polled.rest(nowNanos);
        lastFailed = polled;
        String words = task.trouble.isEmpty()
                ? "no answer from " + name() + " to " + polled.question.words() + after(task)
                : name() + " did not answer " + polled.question.words() + after(task) + ": " + task.trouble;
        boolean silent = unaskedInput == Chunk.STRAY && polls.stream().allMatch(p -> p.failing || p.done());
        if (silent && !lost) {
            lost = true;
            lostAtStart = false;
            polls.forEach(p -> p.unsaid = "");
            listener.lost(nowNanos, words);
        } else if (!silent) {
            polled.unsaid = words;
        }
        if (lost) {
            pause(nowNanos);
        }
    }

    private void pause(long nowNanos) {
        long until = nowNanos + pauseNanos;
        pauseNanos = Math.min(2 * pauseNanos, LAST_PAUSE_NANOS);
        if (!profile.startUp().isEmpty()) {
            // Whoever was off has forgotten what it was told.
            scripts.removeIf(s -> s.startUp);
            scripts.addFirst(new Script("start-up", true, profile.startUp()));
        }
        polls.stream().filter(p -> p.poll.isOnce()).forEach(p -> p.asked = false);
        holdUntil(until);
    }

    /** A step was done. */
    void stepDone(Script script, long nowNanos) {
        holdUntil(nowNanos + Math.round(script.step().waitSeconds() * 1e9));
        script.next();
        if (!script.ended()) {
            return;
        }
        scripts.remove(script);
        if (!script.startUp) {
            listener.noted(nowNanos, script.name + ": done");
        } else if (lost && lostAtStart) {
            lost = false;
            lostAtStart = false;
            pauseNanos = FIRST_PAUSE_NANOS;
            listener.back(nowNanos, name() + " has started");
        }
    }

    /** A step failed for good; a start-up is tried again later, an action is not. */
    void stepFailed(Task task, Script script, long nowNanos, String got) {
        String expected = task.question.expected();
        String words = script.name + " failed at step " + script.number() + ": expected "
                + (expected.isEmpty() ? "an answer" : expected) + ", got " + (got.isEmpty() ? "nothing" : got)
                + after(task);
        scripts.remove(script);
        if (!script.startUp) {
            listener.noted(nowNanos, words);
            return;
        }
        scripts.stream()
                .filter(s -> !s.startUp)
                .forEach(s -> listener.noted(nowNanos, s.name + " was not done: " + words));
        scripts.clear();
        if (!lost) {
            lost = true;
            lostAtStart = true;
            listener.lost(nowNanos, words);
        }
        pause(nowNanos);
    }

    private static String after(Task task) {
        return task.tries > 1 ? String.format(Locale.ROOT, " after %d tries", task.tries) : "";
    }
}
