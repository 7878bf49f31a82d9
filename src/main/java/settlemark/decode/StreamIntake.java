package settlemark.decode;

import settlemark.measure.Chunk;

/** A stream whose bytes show where frames begin and end. */
final class StreamIntake implements Intake {
    private final FrameBuffer buffer;
    private final Framer framer;

    StreamIntake(Framer framer, int maximumFrameBytes) {
        this.framer = framer;
        this.buffer = new FrameBuffer(maximumFrameBytes);
    }

    @Override
    public void accept(Chunk chunk, FrameSink sink) {
        byte[] bytes = chunk.bytes();
        int taken = 0;
        while (taken < bytes.length) {
            taken += buffer.append(bytes, taken, chunk.timeNanos());
            framer.scan(buffer, sink);
        }
    }

    @Override
    public void finish(FrameSink sink) {}

    @Override
    public void reset() {
        buffer.clear();
        framer.reset();
    }

    @Override
    public void begin() {
        framer.begin();
    }

    @Override
    public int undecidedBytes() {
        return framer.undecided(buffer);
    }
}
