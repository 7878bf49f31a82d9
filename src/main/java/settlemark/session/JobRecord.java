package settlemark.session;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import settlemark.job.JobState;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.settle.StageReading;

/**
 * All that a record is made from. The same session gives an equal one.
 *
 * @param header of the session
 * @param job as it ended
 * @param windows the trace around each reading
 * @param instruments what measured
 * @param events what happened besides, in words, with session time
 * @param again empty where it says what was decoded on the day
 * @param beside what people put beside the session
 */
public record JobRecord(
        SessionHeader header,
        JobState job,
        List<ReadingWindow> windows,
        List<Instrument> instruments,
        List<Happened> events,
        Optional<Again> again,
        Beside beside) {
    public JobRecord {
        windows = List.copyOf(windows);
        instruments = List.copyOf(instruments);
        events = List.copyOf(events);
        Objects.requireNonNull(again);
        Objects.requireNonNull(beside);
    }

    /** With nothing beside it. */
    public JobRecord(
            SessionHeader header,
            JobState job,
            List<ReadingWindow> windows,
            List<Instrument> instruments,
            List<Happened> events,
            Optional<Again> again) {
        this(header, job, windows, instruments, events, again, Beside.NOTHING);
    }

    /** Of what was decoded on the day. */
    public JobRecord(
            SessionHeader header,
            JobState job,
            List<ReadingWindow> windows,
            List<Instrument> instruments,
            List<Happened> events) {
        this(header, job, windows, instruments, events, Optional.empty());
    }

    /** The same with what people put beside the session. */
    public JobRecord with(Beside other) {
        return new JobRecord(header, job, windows, instruments, events, again, other);
    }

    /**
     * What people put beside a session, then or later.
     *
     * @param notes oldest first
     * @param files in the order in which they were added; no seals and no reviews
     * @param reviews in order
     */
    public record Beside(List<Note> notes, List<Filed> files, List<Reviewed> reviews) {
        public static final Beside NOTHING = new Beside(List.of(), List.of(), List.of());

        public Beside {
            notes = List.copyOf(notes);
            files = List.copyOf(files);
            reviews = List.copyOf(reviews);
        }
    }

    /**
     * A file.
     *
     * @param picture its content where it is a picture, empty otherwise
     */
    public record Filed(Attachment file, byte[] picture) {}

    /**
     * What a second person said of what was sealed.
     *
     * @param accepted false where it was returned
     * @param fingerprint of the key that they signed with
     * @param holds whether the signature holds
     * @param under other limits and settings under which they judged again, empty where they did not
     * @param changes verdicts that were others under these
     */
    public record Reviewed(
            boolean accepted,
            String person,
            String comment,
            Instant madeAt,
            String fingerprint,
            boolean holds,
            List<String> under,
            List<Rejudging.Change> changes) {
        public Reviewed {
            under = List.copyOf(under);
            changes = List.copyOf(changes);
        }
    }

    /**
     * That the session's bytes were decoded again.
     *
     * @param number of the rereading within the session
     * @param madeAt wall clock
     * @param instead the probes whose profile is another than that of the day, empty where all are the same
     */
    public record Again(int number, Instant madeAt, List<Instead> instead) {
        public Again {
            instead = List.copyOf(instead);
        }
    }

    /**
     * Another profile for a probe.
     *
     * @param probe its name in the session
     * @param profileId of the profile used now
     * @param digest of it, SHA-256 in hex
     * @param formerDigest of the profile of the day
     */
    public record Instead(String probe, String profileId, String digest, String formerDigest) {}

    /**
     * The traces of a reading, with some time before it.
     *
     * @param step key of the step
     * @param reading the reading
     * @param fromNanos start of the window drawn
     * @param toNanos its end
     * @param traces one a channel, zero taken off, in the job's unit
     */
    public record ReadingWindow(
            String step, StageReading reading, long fromNanos, long toNanos, List<RoleTrace> traces) {
        public ReadingWindow {
            traces = List.copyOf(traces);
        }
    }

    /** Trace of one channel: session times and values in the job's unit, NaN across a gap. */
    public record RoleTrace(Role role, Unit unit, long[] timesNanos, double[] values) {}

    /**
     * What measured.
     *
     * @param name in the session
     * @param description from the profile
     * @param profileId which profile
     * @param profileDigest which version of it, SHA-256 in hex
     * @param roles where its channels were
     * @param accuracy in words, per channel
     * @param samples accepted
     * @param rejectedFrames refused
     * @param losses times the link was lost
     * @param batteryPercent that it told last, NaN where it told none
     * @param serial number that the probe itself said, empty where it said none
     */
    public record Instrument(
            String name,
            String description,
            String profileId,
            String profileDigest,
            List<Role> roles,
            List<String> accuracy,
            long samples,
            long rejectedFrames,
            long losses,
            double batteryPercent,
            String serial) {
        /** One that tells neither its battery nor its serial number. */
        public Instrument(
                String name,
                String description,
                String profileId,
                String profileDigest,
                List<Role> roles,
                List<String> accuracy,
                long samples,
                long rejectedFrames,
                long losses) {
            this(
                    name,
                    description,
                    profileId,
                    profileDigest,
                    roles,
                    accuracy,
                    samples,
                    rejectedFrames,
                    losses,
                    Double.NaN,
                    "");
        }
    }

    public record Happened(long timeNanos, String words) {}
}
