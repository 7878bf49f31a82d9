package settlemark.decode;

import org.jspecify.annotations.Nullable;
import settlemark.measure.Chunk;
import settlemark.profile.Framing;

/**
 * Frames with silence between them. A frame ends where the next chunk comes a gap or more after its last byte; its time
 * is that of its last byte. One that is too long is rejected as soon as that is certain, and what follows is discarded
 * up to the next silence. The first frame after a start may have lost its beginning: it only counts where something in
 * it proves that it is whole.
 */
final class GapIntake implements Intake {
    private final long gapNanos;
    private final boolean framesProveTheirStart;
    private final byte[] bytes;
    private int length;
    /** Stream offset of the first byte kept. */
    private long offset;

    private long lastNanos;
    private boolean discarding;
    private boolean mayBeCut = true;

    GapIntake(Framing.IdleGap framing, boolean framesProveTheirStart) {
        this.gapNanos = framing.gapNanos();
        this.framesProveTheirStart = framesProveTheirStart;
        this.bytes = new byte[framing.maximumBytes()];
    }

    @Override
    public void accept(Chunk chunk, FrameSink sink) {
        if ((length > 0 || discarding) && chunk.timeNanos() - lastNanos >= gapNanos) {
            finish(sink);
        }
        lastNanos = chunk.timeNanos();
        byte[] arrived = chunk.bytes();
        int kept = discarding ? 0 : Math.min(arrived.length, bytes.length - length);
        System.arraycopy(arrived, 0, bytes, length, kept);
        length += kept;
        if (kept < arrived.length && !discarding) {
            sink.rejected(lastNanos, offset, "the frame is longer than " + bytes.length + " bytes");
            offset += length;
            length = 0;
            discarding = true;
        }
        if (discarding) {
            offset += arrived.length - kept;
        }
    }

    @Override
    public void finish(FrameSink sink) {
        if (length > 0) {
            @Nullable
            String reason = mayBeCut && !framesProveTheirStart
                    ? "the first frame may have lost its beginning"
                    : sink.frame(bytes, 0, length, lastNanos, offset);
            if (reason != null) {
                sink.rejected(lastNanos, offset, reason);
            }
        }
        offset += length;
        length = 0;
        discarding = false;
        mayBeCut = false;
    }

    @Override
    public void reset() {
        offset += length;
        length = 0;
        discarding = false;
        mayBeCut = true;
    }

    @Override
    public void begin() {
        mayBeCut = false;
    }

    @Override
    public int undecidedBytes() {
        return length;
    }
}
