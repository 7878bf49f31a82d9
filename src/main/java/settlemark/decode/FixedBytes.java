package settlemark.decode;

/** Bytes that are the same in every frame. */
record FixedBytes(String name, int field, int offset, byte[] bytes, boolean text) {
    boolean standAt(byte[] frame, int at) {
        for (int i = 0; i < bytes.length; i++) {
            if (frame[at + i] != bytes[i]) {
                return false;
            }
        }
        return true;
    }

    String complaint(byte[] frame, int from, int to) {
        return text
                ? name + " must be " + Ascii.quoted(bytes, 0, bytes.length) + ", got " + Ascii.quoted(frame, from, to)
                : name + " must be " + Ascii.hex(bytes, 0, bytes.length) + ", got " + Ascii.hex(frame, from, to);
    }
}
