package settlemark.exchange;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Chunk;
import settlemark.profile.Profile;
import settlemark.profile.SerialLine;

/**
 * The questions and answers on one serial line, with one device or several: start-ups, polls and actions, one question at
 * a time, whoever has waited longest first.
 *
 * <p>After a time-out nothing is asked until the line has been quiet for a worst answer time. An answer that may belong to
 * an earlier question is never handed on as the answer to another one: until the earlier ones are settled, what comes is
 * stray, and the question is asked again.
 *
 * <p>Driven from outside: {@link #advance} says what to write and how long to wait, {@link #received} takes what arrived.
 * Times are monotonic, in nanoseconds. For one thread at a time.
 */
public final class Exchange {
    /** An answer that is missing for longer than this, and than three times what answers take, will not come. */
    private static final long MEMORY_NANOS = 5_000_000_000L;

    private final LineTiming timing;
    private final List<@Nullable Device> devices = new ArrayList<>();
    private final Inbox inbox = new Inbox();
    private final Echo echo = new Echo();
    private final OtherMaster otherMaster = new OtherMaster();

    /** The question that waits for its answer. */
    private @Nullable Task asking;
    /** The one whose answer is missing, while the line is drained. */
    private @Nullable Task drained;

    /** The question whose answer may come late, and when it was sent. */
    private @Nullable Task mayBeLate;

    private long mayBeLateNanos;
    private long sentNanos;
    private long deadlineNanos;
    private long drainNanos;
    private long drainedUntilNanos = Long.MIN_VALUE;
    private long lastByteNanos = Long.MIN_VALUE / 2;
    private long served;
    private boolean otherMasterSaid;

    public Exchange(SerialLine line) {
        timing = LineTiming.of(line);
    }

    /**
     * Adds a device; it is started at once.
     *
     * @param unit address on a Modbus line, 1 to 247; 0 for the profile's own
     * @return its number, for the other calls
     * @throws IllegalArgumentException where the profile cannot be used on such a line
     */
    public int add(Profile profile, int unit, long nowNanos, ExchangeListener listener) {
        Device device = new Device(profile, Device.unit(profile, unit), listener);
        device.start(nowNanos);
        devices.add(device);
        return devices.size() - 1;
    }

    /** Nothing more is asked of it and heard of it. */
    public void remove(int number) {
        Device device = devices.set(number, null);
        if (asking != null && asking.device == device) {
            drain(asking, lastByteNanos);
            asking = null;
        }
        if (drained != null && drained.device == device) {
            drained = null;
        }
    }

    /**
     * Has a device do something, as soon as the line is free.
     *
     * @throws IllegalArgumentException where its profile has no such action
     */
    public void act(int number, String actionId) {
        Device device = devices.get(number);
        if (device != null) {
            device.act(actionId);
        }
    }

    /** Whether anything is ever asked on this line; else what arrives is only handed on. */
    public boolean asks() {
        return devices.stream().anyMatch(d -> d != null && d.asks());
    }

    /** The line was gone and is back: all start-ups run again, and nothing that was asked will be answered. */
    public void restart(long nowNanos) {
        asking = null;
        drained = null;
        drainedUntilNanos = Long.MIN_VALUE;
        inbox.clear();
        echo.forget();
        otherMaster.forget();
        for (Device device : devices) {
            if (device != null) {
                device.start(nowNanos);
            }
        }
    }

    /** Time has passed: what to write now, and until when to wait. */
    public Outcome advance(long nowNanos) {
        if (asking != null) {
            Task task = asking;
            long ended = silenceEnds(task);
            if (nowNanos >= ended) {
                judge(task, nowNanos, true);
            } else if (nowNanos >= deadlineNanos) {
                missed(task, nowNanos);
            } else {
                return Outcome.until(Math.min(ended, deadlineNanos));
            }
        }
        if (asking != null) {
            return Outcome.until(deadlineNanos);
        }
        if (nowNanos < drainedUntilNanos) {
            return Outcome.until(drainedUntilNanos);
        }
        return askNext(nowNanos);
    }

    private Outcome askNext(long nowNanos) {
        Task retry = drained;
        Device next = retry == null ? nextDevice() : retry.device;
        if (next == null) {
            return Outcome.until(Long.MAX_VALUE);
        }
        if (retry == null && next.dueNanos() > nowNanos) {
            return Outcome.until(next.dueNanos());
        }
        long silentNanos = lastByteNanos + (next.isModbus() ? timing.silenceNanos() : 0);
        if (nowNanos < silentNanos) {
            return Outcome.until(silentNanos);
        }
        Task task = retry == null ? next.nextTask() : retry;
        drained = null;
        return ask(task, nowNanos);
    }

    private @Nullable Device nextDevice() {
        Device next = null;
        for (Device device : devices) {
            if (device == null || device.dueNanos() == Long.MAX_VALUE) {
                continue;
            }
            if (next == null
                    || device.dueNanos() < next.dueNanos()
                    || device.dueNanos() == next.dueNanos() && device.servedAt < next.servedAt) {
                next = device;
            }
        }
        return next;
    }

    private Outcome ask(Task task, long nowNanos) {
        byte[] bytes = task.question.bytes();
        task.tries++;
        task.device.servedAt = ++served;
        inbox.clear();
        otherMaster.forget();
        sentNanos = nowNanos + timing.transmissionNanos(bytes.length);
        lastByteNanos = Math.max(lastByteNanos, sentNanos);
        if (!task.question.wantsAnswer()) {
            task.device.stepDone(task.script(), sentNanos);
            return new Outcome(bytes, sentNanos);
        }
        asking = task;
        deadlineNanos = sentNanos + timing.transmissionNanos(task.question.answerBytes()) + task.timeOutNanos();
        return new Outcome(bytes, deadlineNanos);
    }

    /** When silence ends the answer that is under way; never where its bytes alone do. */
    private long silenceEnds(Task task) {
        long silence = task.question.endedByNanos();
        return silence == 0 || inbox.size() == 0 ? Long.MAX_VALUE : lastByteNanos + silence;
    }

    /** Bytes arrived. */
    public void received(long nowNanos, byte[] bytes, int from, int to) {
        if (from == to) {
            return;
        }
        lastByteNanos = nowNanos;
        Task task = asking;
        if (task != null) {
            if (!inbox.add(nowNanos, bytes, from, to)) {
                handOther(task.device, 0, inbox.size());
                inbox.clear();
                inbox.add(nowNanos, bytes, from, Math.min(to, from + 1024));
            }
            judge(task, nowNanos, false);
        } else {
            boolean draining = nowNanos < drainedUntilNanos;
            drainedUntilNanos = draining ? nowNanos + drainNanos : drainedUntilNanos;
            unasked(nowNanos, bytes, from, to, draining);
        }
    }

    private void judge(Task task, long nowNanos, boolean silent) {
        if (task.question.endedByNanos() > 0 && !silent) {
            return;
        }
        int own = echo.mayBe(task.question.bytes(), inbox);
        if (own < 0) {
            return;
        }
        Look look = task.question.look(inbox.bytes(), own, inbox.size());
        if (look.kind() != Look.Kind.MORE) {
            if (echo.shown(own)) {
                task.device.listener.noted(
                        nowNanos, "the line gives back what is written to it: that is taken off from here on");
            }
            settle(task, look, own, nowNanos);
        }
    }

    /** The bytes after a question are certain to be an answer of the device. */
    private void settle(Task task, Look look, int own, long nowNanos) {
        asking = null;
        Device device = task.device;
        handOther(device, own, look.from());
        watchForOthers(device, own, look.from(), false);
        boolean doubtful = !device.unanswered.isEmpty(nowNanos);
        if (doubtful) {
            device.doubtUntil(nowNanos + holdNanos(task, nowNanos));
            mayBeLate = task;
            mayBeLateNanos = sentNanos;
        } else {
            device.times.add(nowNanos - sentNanos);
        }
        boolean others = doubtful && !device.unanswered.allAre(task.question);
        device.unanswered.forget();
        if (others) {
            // It may answer an earlier question: dropped, and asked again when that is settled.
            handStray(device, look.from(), look.to());
        } else if (look.kind() == Look.Kind.GOOD) {
            good(task, look, nowNanos);
        } else {
            handStray(device, look.from(), look.to());
            bad(task, look, nowNanos);
        }
        handOther(device, look.to(), inbox.size());
        inbox.clear();
    }

    /**
     * How long a device that owes answers is left alone after one of them: each may take as long as the worst that is
     * known of it. One that was switched off owes nothing.
     */
    private static long holdNanos(Task task, long nowNanos) {
        Device device = task.device;
        long worst = Math.max(2 * task.timeOutNanos(), device.times.worstNanos());
        if (device.isLost()) {
            return worst;
        }
        long lateness = nowNanos - device.unanswered.firstNanos();
        return device.unanswered.count() * (Math.max(worst, lateness) * 11 / 10);
    }

    private void good(Task task, Look look, long nowNanos) {
        if (task.polled != null) {
            Chunk chunk =
                    new Chunk(nowNanos, task.polled.input, Arrays.copyOfRange(inbox.bytes(), look.from(), look.to()));
            task.device.answered(task.polled, nowNanos);
            task.device.complain(task.polled, nowNanos, "");
            task.device.listener.arrived(chunk);
        } else {
            task.device.stepDone(task.script(), nowNanos);
        }
    }

    private void bad(Task task, Look look, long nowNanos) {
        if (look.kind() == Look.Kind.WRONG) {
            task.trouble = look.words();
            giveUpOrRetry(task, nowNanos);
        } else if (task.polled != null) {
            task.device.answered(task.polled, nowNanos);
            task.device.complain(task.polled, nowNanos, task.device.name() + ": " + look.words());
        } else {
            task.device.stepFailed(task, task.script(), nowNanos, look.words());
        }
    }

    private void missed(Task task, long nowNanos) {
        // What looked like our own bytes may be the answer after all.
        Look look = task.question.mayBeRepeated() && echo.isUnknown()
                ? task.question.look(inbox.bytes(), 0, inbox.size())
                : Look.MORE;
        if (look.kind() != Look.Kind.MORE) {
            settle(task, look, 0, nowNanos);
            return;
        }
        int own = Math.max(0, echo.mayBe(task.question.bytes(), inbox));
        asking = null;
        task.trouble =
                Search.isBlank(inbox.bytes(), own, inbox.size()) ? "" : Quoted.of(inbox.bytes(), own, inbox.size());
        handOther(task.device, own, inbox.size());
        watchForOthers(task.device, own, inbox.size(), false);
        inbox.clear();
        long memory = Math.max(MEMORY_NANOS, 3 * Math.max(task.timeOutNanos(), task.device.times.worstNanos()));
        task.device.unanswered.add(sentNanos, sentNanos + memory, task.question);
        giveUpOrRetry(task, nowNanos);
    }

    private void giveUpOrRetry(Task task, long nowNanos) {
        drain(task, nowNanos);
        if (task.mayTryAgain()) {
            drained = task;
        } else if (task.polled != null) {
            task.device.unansweredPoll(task, task.polled, nowNanos);
        } else {
            task.device.stepFailed(task, task.script(), nowNanos, task.trouble);
        }
    }

    private void drain(Task task, long nowNanos) {
        drainNanos = Math.max(task.timeOutNanos(), task.device.times.worstNanos());
        drainedUntilNanos = nowNanos + drainNanos;
        mayBeLate = task;
        mayBeLateNanos = sentNanos;
    }

    /** An answer after its time-out teaches how long the device takes; its bytes are stray all the same. */
    private void late(long nowNanos) {
        Task task = mayBeLate;
        if (task == null || task.question.endedByNanos() > 0) {
            return;
        }
        Look look = task.question.look(inbox.bytes(), 0, inbox.size());
        if (look.kind() == Look.Kind.MORE) {
            return;
        }
        inbox.clear();
        Device device = task.device;
        Long first = device.unanswered.settleFirst();
        long latency = nowNanos - (first == null ? mayBeLateNanos : first);
        device.times.add(latency);
        if (!device.lateSaid) {
            device.lateSaid = true;
            device.listener.noted(
                    nowNanos,
                    device.name() + " answers after its time-out, in " + latency / 1_000_000
                            + " ms: late answers are not used");
        }
    }

    /** Bytes that came while nothing was asked; kept besides, because they may be a part of a late answer. */
    private void unasked(long nowNanos, byte[] bytes, int from, int to, boolean draining) {
        if (!inbox.add(nowNanos, bytes, from, to)) {
            inbox.clear();
            inbox.add(nowNanos, bytes, from, to);
        }
        Device hears = listening();
        if (hears != null) {
            int came = inbox.size() - (to - from);
            handOther(hears, came, inbox.size());
            watchForOthers(hears, came, inbox.size(), !draining && !anyInDoubt(nowNanos));
        }
        if (draining || anyInDoubt(nowNanos)) {
            late(nowNanos);
        } else {
            inbox.clear();
        }
    }

    /** Whose bytes they are that come by themselves. */
    private @Nullable Device listening() {
        Device first = null;
        for (Device device : devices) {
            if (device != null && device.unaskedInput != Chunk.STRAY) {
                return device;
            }
            first = first == null ? device : first;
        }
        return first;
    }

    private boolean anyInDoubt(long nowNanos) {
        return devices.stream().anyMatch(d -> d != null && d.inDoubt(nowNanos));
    }

    /** Bytes that are no answer: the device's own stream, or stray. */
    private void handOther(Device device, int from, int to) {
        if (device.unaskedInput != Chunk.STRAY) {
            inbox.hand(from, to, device.unaskedInput, device.listener::arrived);
        } else if (!Search.isBlank(inbox.bytes(), from, to)) {
            handStray(device, from, to);
        }
    }

    private void handStray(Device device, int from, int to) {
        inbox.hand(from, to, Chunk.STRAY, device.listener::arrived);
    }

    private void watchForOthers(Device device, int from, int to, boolean answersToo) {
        if (otherMasterSaid || !device.isModbus()) {
            return;
        }
        Optional<String> seen = otherMaster.seen(inbox.bytes(), from, to, answersToo);
        if (seen.isPresent()) {
            otherMasterSaid = true;
            for (Device each : devices) {
                if (each != null) {
                    each.listener.noted(
                            lastByteNanos,
                            "another master is on the line: it " + seen.get()
                                    + ". Two masters spoil each other's answers: take one off");
                }
            }
        }
    }
}
