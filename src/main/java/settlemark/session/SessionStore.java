package settlemark.session;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import settlemark.decode.Rejected;
import settlemark.measure.Chunk;
import settlemark.settle.StageReading;

/**
 * A workspace. Writing is for one thread; reading is for any other and never waits for the writer.
 */
public interface SessionStore extends AutoCloseable {
    /** Begins a session that keeps its probes' bytes, and returns its number. */
    default long begin(SessionHeader header) throws StoreException {
        return begin(header, RawBytes.KEPT);
    }

    /** Begins a session and returns its number. */
    long begin(SessionHeader header, RawBytes bytes) throws StoreException;

    /** Writes a batch durably: when this returns, a killed process or a power cut loses none of it. */
    void append(long session, WriteBatch batch) throws StoreException;

    /** Marks the end. A session without one was cut off. */
    void end(long session, long timeNanos) throws StoreException;

    /** A session that has ended goes on; nothing where it has not ended. */
    void reopen(long session) throws StoreException;

    /** Newest first. */
    List<Summary> sessions() throws StoreException;

    /** By number or by key. */
    Optional<Summary> find(String numberOrKey) throws StoreException;

    SessionHeader header(long session) throws StoreException;

    /**
     * A short text that is another one as soon as more is stored of a session, or something of it is missing: what was found
     * in a session may be remembered beside it.
     */
    String mark(long session) throws StoreException;

    /**
     * What stays the same of the device that a probe was the last time.
     *
     * @return of the newest session that has a probe of that name; empty where none has or nothing was known of it
     */
    String lastIdentity(String probe) throws StoreException;

    /** The devices that sessions were streamed from, as far as they have an identity; the last used first. */
    List<DeviceUse> devices() throws StoreException;

    /** Whether a session's bytes are there; where not, its events are without them. */
    RawBytes rawBytes(long session) throws StoreException;

    /** Every event in order of sequence. */
    void events(long session, Sink<SessionEvent> sink) throws StoreException;

    List<StageReading> readings(long session) throws StoreException;

    /** Samples of one channel with {@code fromNanos <= time <= toNanos}, in order. */
    SampleBlock samples(long session, int probe, int channel, long fromNanos, long toNanos) throws StoreException;

    /** The sample of a channel that has the latest time; empty where it has none. */
    SampleBlock last(long session, int probe, int channel) throws StoreException;

    /**
     * Channels of a probe as the columns of a picture see them.
     *
     * @param span both ends belong to it
     * @param columns at least 1
     * @return one for each channel, in their order
     */
    List<Overview> overview(
            long session, int probe, List<Integer> channels, Span span, int columns, Overview.Edges edges)
            throws StoreException;

    /** What a probe sent with {@code fromNanos <= time <= toNanos}, in order: the bytes that its samples came from. */
    void bytes(long session, int probe, Span span, Sink<Chunk> sink) throws StoreException;

    /** Samples of a probe over all its channels. */
    long sampleCount(long session, int probe) throws StoreException;

    /** What was refused of a probe's bytes, in order. */
    void rejected(long session, int probe, Sink<Rejected> sink) throws StoreException;

    /** What the person has chosen. */
    Settings settings();

    /** Looked at anew with each call; takes microseconds. */
    StoreHealth health();

    /** What people put beside sessions. */
    Papers papers();

    /** What measures, by serial number. */
    Instruments instruments();

    /** Sessions that were decoded again. */
    Rereadings rereadings();

    @Override
    void close() throws StoreException;

    /** Takes what is read out, one after the other; may itself use the store. */
    @FunctionalInterface
    interface Sink<T> {
        void take(T item) throws StoreException;
    }

    /**
     * A line of the session list.
     *
     * @param number within the workspace
     * @param key from the header
     * @param title from the header
     * @param startedAt wall clock
     * @param ended false where it was cut off or is still running
     * @param simulated whether it came from the rig
     * @param durationNanos up to the last thing stored
     */
    record Summary(
            long number,
            String key,
            String title,
            Instant startedAt,
            boolean ended,
            boolean simulated,
            long durationNanos) {}
}
