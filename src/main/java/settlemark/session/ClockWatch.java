package settlemark.session;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/**
 * Sees that the computer slept or that its wall clock was set, from readings of three clocks: the monotonic one, which
 * stands still in sleep on some systems; the boot clock, which runs on where there is one; and the wall clock. For one
 * thread.
 *
 * <p>Session time is the monotonic clock plus the time slept, each sleep added once. A wall clock that is merely drawn
 * into line, as time services do at up to 500 parts in a million (adjtimex(2)), is no event.
 */
public final class ClockWatch {
    /** Shorter sleeps do not happen, and readings of two clocks lie apart by what the scheduler takes between them. */
    private static final long THRESHOLD_NANOS = 1_000_000_000L;

    private static final double SLEW = 500e-6;

    private long monotonicNanos;
    /** Boot clock minus monotonic clock at the start, grown by each sleep that was reported. */
    private OptionalLong bootLeadNanos;
    /** Wall clock minus monotonic clock, followed at each look. */
    private long wallLeadNanos;

    private long sleptNanos;

    /**
     * Takes the first readings.
     *
     * @param monotonicNanos such as {@link System#nanoTime()} since the session's start
     * @param bootNanos time since the computer started, sleep included, from any origin; empty where it cannot be had
     * @param wall the wall clock
     */
    public ClockWatch(long monotonicNanos, OptionalLong bootNanos, Instant wall) {
        this.monotonicNanos = monotonicNanos;
        this.bootLeadNanos = lead(bootNanos, monotonicNanos);
        this.wallLeadNanos = nanos(wall) - monotonicNanos;
    }

    /** All time slept so far, in nanoseconds: what session time has above the monotonic clock. */
    public long sleptNanos() {
        return sleptNanos;
    }

    /** Takes readings from the same clocks again; returns a sleep, a step of the wall clock, both or neither. */
    public List<SessionEvent.Clock> look(long nowNanos, OptionalLong bootNanos, Instant wall) {
        List<SessionEvent.Clock> events = new ArrayList<>(2);
        long slept = slept(bootNanos, nowNanos);
        sleptNanos += slept;
        long sessionNanos = nowNanos + sleptNanos;
        if (slept > 0) {
            events.add(new SessionEvent.Clock(sessionNanos, true, slept, "the computer slept " + words(slept)));
        }
        long lead = nanos(wall) - nowNanos;
        long stepped = lead - wallLeadNanos - slept;
        if (Math.abs(stepped) > THRESHOLD_NANOS + (long) (SLEW * (nowNanos - monotonicNanos + slept))) {
            events.add(new SessionEvent.Clock(sessionNanos, false, stepped, stepWords(stepped, bootNanos.isPresent())));
        }
        wallLeadNanos = lead;
        monotonicNanos = nowNanos;
        return events;
    }

    private long slept(OptionalLong bootNanos, long nowNanos) {
        OptionalLong lead = lead(bootNanos, nowNanos);
        if (lead.isEmpty() || bootLeadNanos.isEmpty()) {
            bootLeadNanos = bootLeadNanos.isEmpty() ? lead : bootLeadNanos;
            return 0;
        }
        long slept = lead.getAsLong() - bootLeadNanos.getAsLong();
        if (slept <= THRESHOLD_NANOS) {
            return 0;
        }
        bootLeadNanos = lead;
        return slept;
    }

    private static String stepWords(long stepped, boolean sleepIsSeen) {
        if (stepped < 0) {
            return "the clock was set back by " + words(-stepped);
        }
        return "the clock was set forward by " + words(stepped) + (sleepIsSeen ? "" : ", or the computer slept");
    }

    /** The two greatest units, such as {@code 12 min 3 s}. */
    private static String words(long nanos) {
        Duration duration = Duration.ofNanos(nanos);
        if (duration.toDays() > 0) {
            return duration.toDays() + " d " + duration.toHoursPart() + " h";
        }
        if (duration.toHours() > 0) {
            return duration.toHours() + " h " + duration.toMinutesPart() + " min";
        }
        if (duration.toMinutes() > 0) {
            return duration.toMinutes() + " min " + duration.toSecondsPart() + " s";
        }
        return duration.toSeconds() + " s";
    }

    private static OptionalLong lead(OptionalLong clockNanos, long monotonicNanos) {
        return clockNanos.isEmpty() ? clockNanos : OptionalLong.of(clockNanos.getAsLong() - monotonicNanos);
    }

    /** Enough for three centuries around 1970. */
    private static long nanos(Instant wall) {
        return Math.addExact(Math.multiplyExact(wall.getEpochSecond(), 1_000_000_000L), wall.getNano());
    }
}
