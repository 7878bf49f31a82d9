package settlemark.decode;

import settlemark.measure.Chunk;
import settlemark.profile.Framing;

/** Takes the chunks of one message and hands on its frames. */
sealed interface Intake permits StreamIntake, PacketIntake, GapIntake {
    void accept(Chunk chunk, FrameSink sink);

    /** No more bytes come: what only silence would end is a frame. */
    void finish(FrameSink sink);

    /** Forgets the frame that was under way; the next byte may lie in the middle of a frame. */
    void reset();

    /** The next byte is known to be the first of a frame. */
    void begin();

    /** Bytes that wait for the rest of their frame. */
    int undecidedBytes();

    static Intake of(Contents contents) {
        Framing framing = contents.message().framing();
        boolean proves = contents.provesItsStart();
        if (framing instanceof Framing.Packet packet) {
            return new PacketIntake(packet.maximumBytes());
        }
        if (framing instanceof Framing.IdleGap gap) {
            return new GapIntake(gap, proves);
        }
        Framer framer;
        if (framing instanceof Framing.Line line) {
            framer = new LineFramer(line, proves);
        } else if (framing instanceof Framing.Marked marked) {
            framer = MarkFramer.of(marked, proves);
        } else if (framing instanceof Framing.Cobs cobs) {
            framer = MarkFramer.of(cobs, proves);
        } else {
            framer = BinaryFramer.of(framing, contents.leastBytes());
        }
        return new StreamIntake(framer, framing.maximumBytes());
    }
}
