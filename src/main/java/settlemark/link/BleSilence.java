package settlemark.link;

import java.util.Optional;
import settlemark.measure.Channel;
import settlemark.profile.ChannelSource;
import settlemark.profile.Profile;

/**
 * How long an input that speaks by itself has been silent: after three periods it is stale, after as long again it is
 * asked anew, after as long again it is dead. It is not asked anew at once, because that throws away what is only late. Only where the profile states a period: a probe that speaks when something changes may be silent.
 */
final class BleSilence {
    private static final double PERIODS = 3;
    private static final long HALTED_NANOS = 2_000_000_000L;

    private final long limitNanos;
    private long sinceNanos = System.nanoTime();
    private long lookedNanos = sinceNanos;
    private int told;

    enum State {
        FINE,
        /** Reported once. */
        STALE,
        /** Reported once, as long after it was stale. */
        FORGOTTEN,
        DEAD
    }

    BleSilence(long limitNanos) {
        this.limitNanos = limitNanos;
    }

    /** Empty where no channel of the input's message has a period. */
    static Optional<BleSilence> of(Profile profile, int input, BleSettings settings) {
        int message = profile.inputs().get(input).message();
        return periodSeconds(profile, message)
                .map(s -> new BleSilence(Math.max(
                        Math.round(PERIODS * s * 1e9), settings.leastSilence().toNanos())));
    }

    private static Optional<Double> periodSeconds(Profile profile, int message) {
        return profile.sources().stream()
                .filter(s -> s.message() == message)
                .map(ChannelSource::channel)
                .map(Channel::periodSeconds)
                .filter(s -> s > 0)
                .min(Double::compare);
    }

    void restart() {
        told = 0;
        sinceNanos = System.nanoTime();
    }

    State look() {
        long now = System.nanoTime();
        // Somebody who did not look for a while, such as a halted program, has not heard silence.
        if (now - lookedNanos > 2 * limitNanos + HALTED_NANOS) {
            sinceNanos = now;
        }
        lookedNanos = now;
        long silent = now - sinceNanos;
        if (silent <= (told + 1) * limitNanos) {
            return State.FINE;
        }
        told++;
        return switch (told) {
            case 1 -> State.STALE;
            case 2 -> State.FORGOTTEN;
            default -> State.DEAD;
        };
    }

    double seconds() {
        return (System.nanoTime() - sinceNanos) / 1e9;
    }

    /** Until the next look is worth it. */
    long dueNanos() {
        long end = sinceNanos + (told + 1) * limitNanos;
        return Math.max(1_000_000, end - System.nanoTime());
    }
}
