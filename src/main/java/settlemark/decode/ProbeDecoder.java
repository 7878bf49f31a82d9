package settlemark.decode;

import org.jspecify.annotations.Nullable;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.profile.Framing;
import settlemark.profile.Profile;

/**
 * Turns a probe's bytes into samples, as its profile says. The samples depend on the bytes and the times of the chunks
 * that they came in, and not on how a chunk was cut: a frame has the time of the chunk with its last byte.
 *
 * <p>Garbage never throws: it is handed on as {@link Rejected} and counted, and the next good frame is found. In a
 * profile of text lines whose first column is no literal and that have no checksum, the first line after the start or a
 * {@link #reset} is rejected, because it may have lost its beginning and still look like a number.
 *
 * <p>For one thread at a time.
 */
public final class ProbeDecoder {
    private final FrameBuffer buffer;
    private final Framer framer;
    private final FrameReader reader;
    private final double[] values;
    private final SampleStatus[] statuses;
    private final Dispatch dispatch = new Dispatch();
    private long acceptedFrames;
    private long rejectedFrames;
    private long missedFrames;
    private long samples;

    public ProbeDecoder(Profile profile) {
        buffer = new FrameBuffer(profile.messages().get(0).framing().maximumBytes());
        reader = FrameReader.of(profile);
        if (reader instanceof LineReader lines && profile.messages().get(0).framing() instanceof Framing.Line line) {
            framer = new LineFramer(line, lines.provesStart());
        } else {
            framer = BinaryFramer.of(profile.messages().get(0).framing(), ((BinaryReader) reader).leastBytes());
        }
        values = new double[profile.sources().size()];
        statuses = new SampleStatus[values.length];
    }

    /** Takes the next bytes of the stream; the sink hears of all that is now certain. */
    public void accept(Chunk chunk, DecodeSink sink) {
        byte[] bytes = chunk.bytes();
        dispatch.sink = sink;
        int taken = 0;
        while (taken < bytes.length) {
            taken += buffer.append(bytes, taken, chunk.timeNanos());
            framer.scan(buffer, dispatch);
        }
        dispatch.sink = null;
    }

    /** Forgets the frame that was under way, after a gap in the stream. Counters and offsets go on. */
    public void reset() {
        buffer.clear();
        framer.reset();
        reader.reset();
    }

    public long acceptedFrames() {
        return acceptedFrames;
    }

    /** Rejections so far; each was handed to a sink. */
    public long rejectedFrames() {
        return rejectedFrames;
    }

    /** Frames that never arrived or were rejected, by the gaps in the frames' own counter; 0 without a counter. */
    public long missedFrames() {
        return missedFrames;
    }

    public long samples() {
        return samples;
    }

    /** Bytes that have arrived and are not decided yet. */
    int undecidedBytes() {
        return buffer.length();
    }

    private final class Dispatch implements FrameSink {
        private @Nullable DecodeSink sink;

        @Override
        public @Nullable String frame(byte[] bytes, int from, int to, long timeNanos) {
            @Nullable String reason = reader.read(bytes, from, to, values, statuses);
            if (reason != null) {
                return reason;
            }
            acceptedFrames++;
            missedFrames += reader.missed();
            DecodeSink target = sink;
            if (target != null) {
                for (int i = 0; i < values.length; i++) {
                    samples++;
                    target.sample(i, timeNanos, values[i], statuses[i]);
                }
            }
            return null;
        }

        @Override
        public void rejected(long timeNanos, long offset, String reason) {
            rejectedFrames++;
            DecodeSink target = sink;
            if (target != null) {
                target.rejected(new Rejected(timeNanos, offset, reason));
            }
        }
    }
}
