package settlemark.session;

import java.time.Instant;
import java.util.List;
import settlemark.decode.Rejected;
import settlemark.settle.StageReading;

/**
 * The rereadings in a workspace. Nothing here changes what was stored on the day. Threads as in {@link SessionStore}.
 */
public interface Rereadings {
    /**
     * Begins one. It is listed once it is complete; what was left of one that was cut off is removed now.
     *
     * @param probes those of the session in their order
     */
    Rereading begin(long session, List<ProbeSetup> probes, Instant madeAt, String version) throws StoreException;

    /**
     * Writes results durably.
     *
     * @param results without events, which the session has already
     */
    void append(Rereading rereading, WriteBatch results) throws StoreException;

    /** From here on it is listed. */
    void complete(Rereading rereading) throws StoreException;

    /** Removes one that is not complete. */
    void discard(Rereading rereading) throws StoreException;

    /** The complete ones of a session, oldest first. */
    List<Rereading> of(long session) throws StoreException;

    List<StageReading> readings(Rereading rereading) throws StoreException;

    /** Samples of one channel with {@code fromNanos <= time <= toNanos}, in order. */
    SampleBlock samples(Rereading rereading, int probe, int channel, long fromNanos, long toNanos)
            throws StoreException;

    /** Samples of a probe over all its channels. */
    long sampleCount(Rereading rereading, int probe) throws StoreException;

    /** What was refused of a probe's bytes, in order. */
    void rejected(Rereading rereading, int probe, SessionStore.Sink<Rejected> sink) throws StoreException;
}
