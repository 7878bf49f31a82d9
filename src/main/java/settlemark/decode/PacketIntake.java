package settlemark.decode;

import org.jspecify.annotations.Nullable;
import settlemark.measure.Chunk;

/** Each chunk is a frame. */
final class PacketIntake implements Intake {
    private final int maximumBytes;
    private long offset;

    PacketIntake(int maximumBytes) {
        this.maximumBytes = maximumBytes;
    }

    @Override
    public void accept(Chunk chunk, FrameSink sink) {
        byte[] bytes = chunk.bytes();
        @Nullable
        String reason = bytes.length > maximumBytes
                ? "the packet has " + bytes.length + " bytes where a frame has at most " + maximumBytes
                : sink.frame(bytes, 0, bytes.length, chunk.timeNanos(), offset);
        if (reason != null) {
            sink.rejected(chunk.timeNanos(), offset, reason);
        }
        offset += bytes.length;
    }

    @Override
    public void finish(FrameSink sink) {}

    @Override
    public void reset() {}

    @Override
    public void begin() {}

    @Override
    public int undecidedBytes() {
        return 0;
    }
}
