package settlemark.decode;

import settlemark.profile.Framing;

/** How long a binary frame is, from its first bytes. */
sealed interface FrameLength {
    /** Bytes that must be there before the length is known. */
    int headerBytes();

    /** Length of the whole frame, -1 where no frame has such a length. */
    int of(byte[] bytes, int from);

    /** Why no frame has such a length. */
    String complaint(byte[] bytes, int from);

    /** All frames have one length. */
    record Always(int frameBytes) implements FrameLength {
        @Override
        public int headerBytes() {
            return frameBytes;
        }

        @Override
        public int of(byte[] bytes, int from) {
            return frameBytes;
        }

        @Override
        public String complaint(byte[] bytes, int from) {
            throw new IllegalStateException("a fixed length is never wrong");
        }
    }

    /** The frame says its length. */
    final class Said implements FrameLength {
        private final Framing.LengthField field;
        private final int leastBytes;

        Said(Framing.LengthField field, int leastBytes) {
            this.field = field;
            this.leastBytes = Math.max(leastBytes, field.headerBytes());
        }

        @Override
        public int headerBytes() {
            return field.headerBytes();
        }

        @Override
        public int of(byte[] bytes, int from) {
            long said = said(bytes, from);
            return said < leastBytes || said > field.maximumBytes() ? -1 : (int) said;
        }

        @Override
        public String complaint(byte[] bytes, int from) {
            return "length " + said(bytes, from) + " where a frame has " + leastBytes + " to " + field.maximumBytes()
                    + " bytes";
        }

        private long said(byte[] bytes, int from) {
            return RawBits.bits(field.wire(), bytes, from + field.at()) + field.adds();
        }
    }
}
