package settlemark.decode;

/** Cuts the stream into frames. Its decisions depend on the bytes alone, never on how they were cut into chunks. */
sealed interface Framer permits LineFramer, BinaryFramer, MarkFramer {
    /** Decides all that can be decided; what is left is shorter than the longest frame. */
    void scan(FrameBuffer buffer, FrameSink sink);

    /** Forgets what came before; the next byte may lie in the middle of a frame. */
    void reset();

    /** The next byte is known to be the first of a frame. */
    void begin();

    /** Bytes in the buffer that wait for the rest of their frame. */
    int undecided(FrameBuffer buffer);
}
