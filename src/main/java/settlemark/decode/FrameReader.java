package settlemark.decode;

import org.jspecify.annotations.Nullable;

/** Reads what one frame says. */
sealed interface FrameReader permits BinaryReader, FieldwiseReader {
    /**
     * Fills in the channels and facts.
     *
     * @return null where the frame is good, else why not
     */
    @Nullable
    String read(byte[] bytes, int from, int to, FrameValues out);

    /** Frames lost before the last one by the frames' own counter, 0 where they carry none. */
    long missed();

    /** Forgets the counter. */
    void reset();

    static FrameReader of(Contents contents) {
        return BinaryReader.reads(contents) ? new BinaryReader(contents) : new FieldwiseReader(contents);
    }
}
