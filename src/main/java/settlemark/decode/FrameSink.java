package settlemark.decode;

import org.jspecify.annotations.Nullable;

/** What a framer hands on. */
interface FrameSink {
    /**
     * A frame's content, without delimiter, marks and escapes; with start marker and checksum.
     *
     * @param offset of the frame in the stream
     * @return null where it is good and its samples are on their way, else why not
     */
    @Nullable
    String frame(byte[] bytes, int from, int to, long timeNanos, long offset);

    /** Bytes that are no good frame. */
    void rejected(long timeNanos, long offset, String reason);
}
