package settlemark.app;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.Queue;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import settlemark.session.ClockWatch;
import settlemark.session.SessionEvent;
import settlemark.session.Ticker;

/**
 * The computer's own time, from 0 at its making. Safe to call from any thread.
 *
 * <p>{@link System#nanoTime()} stands still while a Linux computer sleeps. So the boot clock is looked at as soon as the
 * wall clock, which is cheap to ask, is seen to have jumped: the first chunk after a sleep has the right time already.
 */
public final class SystemTicker implements Ticker {
    private static final Path UPTIME = Path.of("/proc/uptime");
    private static final long JUMP_MILLIS = 500;
    private static final long APART_NANOS = 100_000_000;
    private static final int LOOKS = 5;

    private final LongSupplier nanoClock;
    private final Supplier<OptionalLong> bootClock;
    private final Supplier<Instant> wallClock;
    private final long startNanos;
    private final ClockWatch watch;
    private final Queue<SessionEvent.Clock> events = new ArrayDeque<>();

    /** Wall clock minus monotonic clock as last seen, and the time slept; together, so that no reader sees one only. */
    private volatile Seen seen;

    private record Seen(long wallLeadMillis, long sleptNanos) {}

    public SystemTicker() {
        this(System::nanoTime, SystemTicker::bootNanos, Instant::now);
    }

    SystemTicker(LongSupplier nanoClock, Supplier<OptionalLong> bootClock, Supplier<Instant> wallClock) {
        this.nanoClock = nanoClock;
        this.bootClock = bootClock;
        this.wallClock = wallClock;
        this.startNanos = nanoClock.getAsLong();
        Instant wall = wallClock.get();
        this.watch = new ClockWatch(0, bootClock.get(), wall);
        this.seen = new Seen(wall.toEpochMilli(), 0);
    }

    @Override
    public long nanos() {
        long now = nanoClock.getAsLong() - startNanos;
        Seen last = seen;
        if (Math.abs(leadMillis(now) - last.wallLeadMillis) > JUMP_MILLIS) {
            look();
            // The jump itself may be what this very call stumbled on.
            now = nanoClock.getAsLong() - startNanos;
            last = seen;
        }
        return now + last.sleptNanos;
    }

    @Override
    public Instant wall() {
        return wallClock.get();
    }

    /**
     * What became of the clocks since the last call, each sleep and each step once. To be called about once a second, so
     * that slow drift is told from a step.
     */
    public List<SessionEvent.Clock> events() {
        synchronized (watch) {
            look();
            List<SessionEvent.Clock> taken = new ArrayList<>(events);
            events.clear();
            return taken;
        }
    }

    private void look() {
        synchronized (watch) {
            for (int tries = 1; ; tries++) {
                long before = nanoClock.getAsLong();
                OptionalLong boot = bootClock.get();
                Instant wall = wallClock.get();
                long after = nanoClock.getAsLong();
                // Readings that the scheduler tore apart would look like a step of the clock.
                if (after - before < APART_NANOS || tries == LOOKS) {
                    note(after - startNanos, boot, wall);
                    return;
                }
            }
        }
    }

    private void note(long now, OptionalLong boot, Instant wall) {
        events.addAll(watch.look(now, boot, wall));
        seen = new Seen(wall.toEpochMilli() - now / 1_000_000, watch.sleptNanos());
    }

    private long leadMillis(long nowNanos) {
        return wallClock.get().toEpochMilli() - nowNanos / 1_000_000;
    }

    /** From the first number of proc(5)'s uptime, seconds with two decimals, sleep included; empty on other systems. */
    private static OptionalLong bootNanos() {
        try {
            return parse(Files.readString(UPTIME, StandardCharsets.US_ASCII));
        } catch (IOException e) {
            return OptionalLong.empty();
        }
    }

    static OptionalLong parse(String uptime) {
        int end = uptime.indexOf(' ');
        try {
            return OptionalLong.of(Math.round(Double.parseDouble(uptime.substring(0, Math.max(0, end))) * 1e9));
        } catch (NumberFormatException e) {
            return OptionalLong.empty();
        }
    }
}
