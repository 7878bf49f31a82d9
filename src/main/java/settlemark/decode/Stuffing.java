package settlemark.decode;

import settlemark.profile.ByteText;
import settlemark.profile.Framing;

/** How the content of a frame travels between its marks. */
sealed interface Stuffing permits PlainContent, CodedEscapes, FlippedEscapes, OverheadStuffing {
    /** Whether the byte and the next one stand for one byte of content, so that no mark begins with the second. */
    default boolean joins(byte first, byte second) {
        return false;
    }

    /** Whether a byte only has its meaning together with the next one. */
    default boolean needsNext(byte first) {
        return false;
    }

    /**
     * The content of bytes between marks.
     *
     * @param out long enough for as many bytes
     * @return bytes of content, -1 where they are not well-formed
     */
    int unstuff(byte[] bytes, int from, int to, byte[] out);

    /** Why bytes are not well-formed. */
    String complaint(byte[] bytes, int from, int to);

    /** The bytes that a content travels as. */
    byte[] stuff(byte[] content);

    static Stuffing of(Framing.Marked marked) {
        if (marked.escaping() instanceof Framing.Stuffed stuffed) {
            return new CodedEscapes(stuffed);
        }
        if (marked.escaping() instanceof Framing.Flipped flipped) {
            return new FlippedEscapes(flipped, marks(marked));
        }
        return new PlainContent(marked.start(), marked.end());
    }

    private static ByteText marks(Framing.Marked marked) {
        byte[] marks = new byte[marked.start().length() + marked.end().length()];
        System.arraycopy(marked.start().toBytes(), 0, marks, 0, marked.start().length());
        System.arraycopy(
                marked.end().toBytes(),
                0,
                marks,
                marked.start().length(),
                marked.end().length());
        return ByteText.of(marks);
    }
}
