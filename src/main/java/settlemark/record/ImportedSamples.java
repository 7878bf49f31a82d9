package settlemark.record;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import settlemark.measure.Role;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;

/**
 * What a file of exported samples says of its session.
 *
 * @param key of the session that was exported
 * @param simulated whether its lines say so
 * @param startedAt wall clock at session time 0
 * @param zone offset of the first line's time
 * @param channels in the order in which they first appear; samples name them by index
 * @param samples lines
 * @param endNanos latest session time, 0 where there is none
 */
public record ImportedSamples(
        String key,
        boolean simulated,
        Instant startedAt,
        ZoneId zone,
        List<Column> channels,
        long samples,
        long endNanos) {
    public ImportedSamples {
        channels = List.copyOf(channels);
    }

    /** A channel of a probe. */
    public record Column(String probe, String channel, Unit unit, Optional<Role> role) {}

    /** Takes the samples, in the order of the file. */
    @FunctionalInterface
    public interface Sink<E extends Exception> {
        void take(int channel, long timeNanos, double value, SampleStatus status) throws E;
    }
}
