package settlemark.decode;

/** Cuts the stream into frames. Its decisions depend on the bytes alone, never on how they were cut into chunks. */
sealed interface Framer permits LineFramer, BinaryFramer {
    /** Decides all that can be decided; what is left is shorter than the longest frame. */
    void scan(FrameBuffer buffer, FrameSink sink);

    /** Forgets what came before; the next byte may lie in the middle of a frame. */
    void reset();
}
