package settlemark.profile;

/** How many bytes there are to point at: those of a frame without its marks, escapes and stuffing. */
final class FrameRoom {
    private FrameRoom() {}

    /** Most that a frame can hold. */
    static int bytes(Framing framing) {
        if (framing instanceof Framing.Marked marked) {
            return marked.maximumBytes()
                    - marked.start().length()
                    - marked.end().length();
        }
        // One byte of overhead at least and the zero at the end (S. Cheshire, M. Baker, 1999).
        return framing instanceof Framing.Cobs cobs ? cobs.maximumBytes() - 2 : framing.maximumBytes();
    }
}
