package settlemark.session;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import settlemark.job.JobState;
import settlemark.measure.Role;

/**
 * Everything that a screen shows, at one instant; immutable and safe to hand between threads.
 *
 * @param revision grows with every change
 * @param timeNanos session time
 * @param wall wall clock, for labels
 * @param header of the session
 * @param probes in the header's order
 * @param channels those with a role, in the order of the roles
 * @param job empty for a plain log
 * @param stored what is durable
 * @param events what happened besides samples, newest last, the last hundred
 */
public record Snapshot(
        long revision,
        long timeNanos,
        Instant wall,
        SessionHeader header,
        List<ProbeView> probes,
        List<ChannelView> channels,
        Optional<JobState> job,
        Stored stored,
        List<JobRecord.Happened> events) {
    public Snapshot {
        probes = List.copyOf(probes);
        channels = List.copyOf(channels);
        events = List.copyOf(events);
    }

    /**
     * What is durable.
     *
     * @param untilNanos session time up to which everything is stored, -1 before the first commit
     * @param samples stored so far
     * @param failure what is wrong and the remedy, empty where all is well
     * @param warning what will go wrong unless something is done, empty where nothing will
     */
    public record Stored(long untilNanos, long samples, String failure, String warning) {
        public static final Stored NOTHING = new Stored(-1, 0, "");

        public Stored(long untilNanos, long samples, String failure) {
            this(untilNanos, samples, failure, "");
        }
    }

    public Optional<ChannelView> channel(Role role) {
        return channels.stream().filter(c -> c.role() == role).findFirst();
    }
}
