package settlemark.job;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import settlemark.measure.Dimension;
import settlemark.measure.Role;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/**
 * The pressures of a step that are taken while its temperatures still come, each with its own time. They stand for the same
 * burner as long as none has moved by more than its settled rule allows: the drift and the swing together.
 */
final class TakenFirst {
    /** A pressure has moved when it stays away this long, settled or not; a shorter swing is one; this program's own. */
    private static final double AWAY_SECONDS = 5;

    private static final String LEFT =
            "The pressures that were taken first do not count: the step was left before the rest" + " had settled.";

    private final Map<Role, Taken> taken = new EnumMap<>(Role.class);
    private boolean wanted;
    private long timeNanos = -1;

    private static final class Taken {
        final ChannelReading part;
        /** Before zero and correction. */
        final double raw;

        final double allowed;
        long awaySinceNanos = -1;

        Taken(ChannelReading part, double raw, double allowed) {
            this.part = part;
            this.raw = raw;
            this.allowed = allowed;
        }
    }

    /** Nothing is taken; whether the pressures shall be as soon as they stand. */
    void restart(boolean wanted) {
        taken.clear();
        this.wanted = wanted;
    }

    /** The step was left before the rest had settled. */
    Optional<String> drop() {
        boolean any = !taken.isEmpty();
        restart(false);
        return any ? Optional.of(LEFT) : Optional.empty();
    }

    void want() {
        wanted = true;
    }

    /** Whether the pressures shall be taken and are not. */
    boolean due() {
        return wanted && taken.isEmpty();
    }

    boolean has(Role role) {
        return taken.containsKey(role);
    }

    static List<Role> pressures(PlanStep step) {
        return step.required().stream()
                .filter(r -> r.dimension() == Dimension.PRESSURE)
                .toList();
    }

    /** @param reading of the pressures, each of them settled */
    void take(StageReading reading, Map<Role, ChannelNow> channels) {
        timeNanos = reading.timeNanos();
        for (ChannelReading part : reading.channels()) {
            ChannelNow now = channels.get(part.role());
            if (now != null) {
                double allowed = now.settle().limit() + now.settle().band();
                taken.put(part.role(), new Taken(part, raw(now), Double.isFinite(allowed) ? allowed : 0));
            }
        }
    }

    /** What has moved since it was taken; then nothing is taken any more, and all is waited for again. */
    Optional<String> moved(long nowNanos, Map<Role, ChannelNow> channels) {
        for (Map.Entry<Role, Taken> entry : taken.entrySet()) {
            Taken its = entry.getValue();
            ChannelNow now = channels.get(entry.getKey());
            double moved = now == null ? Double.NaN : raw(now) - its.raw;
            // A value that is none is away as well.
            if (Math.abs(moved) <= its.allowed) {
                its.awaySinceNanos = -1;
            } else if (its.awaySinceNanos < 0) {
                its.awaySinceNanos = nowNanos;
            } else if (nowNanos - its.awaySinceNanos >= AWAY_SECONDS * 1e9) {
                taken.clear();
                return Optional.of(words(its.part, its.part.value() + moved));
            }
        }
        return Optional.empty();
    }

    private static double raw(ChannelNow now) {
        return now.settled() ? now.settle().value() : now.value();
    }

    /** What is taken, for those who wait for the rest; empty where nothing is. */
    String standing() {
        return taken.isEmpty()
                ? ""
                : " (" + taken.keySet().stream().map(Role::word).collect(Collectors.joining(", ")) + " taken)";
    }

    private static String words(ChannelReading part, double value) {
        return String.format(
                Locale.ROOT,
                "The pressures that were taken first do not count: the %s moved by %+.2f %s, from %.2f to %.2f, before the"
                        + " rest had settled.",
                part.role().word(),
                value - part.value(),
                part.unit().symbol(),
                part.value(),
                value);
    }

    /** What was taken first, in the place of what stands now. */
    StageReading into(StageReading last) {
        return taken.isEmpty()
                ? last
                : new StageReading(
                        last.step(),
                        last.purpose(),
                        last.timeNanos(),
                        last.byHand(),
                        last.handReason(),
                        last.channels().stream()
                                .map(c -> taken.containsKey(c.role()) ? taken.get(c.role()).part : c)
                                .toList());
    }

    /** How much earlier than the rest; empty where nothing was taken first. */
    Optional<String> words(StageReading whole) {
        return taken.isEmpty()
                ? Optional.empty()
                : Optional.of(String.format(
                        Locale.ROOT,
                        "The pressures were taken %.0f s before the rest; none moved beyond its settled rule in between.",
                        (whole.timeNanos() - timeNanos) / 1e9));
    }
}
