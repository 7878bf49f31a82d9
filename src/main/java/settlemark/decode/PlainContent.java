package settlemark.decode;

import settlemark.profile.ByteText;

/** Marks do not occur within the content, which travels as it is. */
record PlainContent(ByteText start, ByteText end) implements Stuffing {
    @Override
    public int unstuff(byte[] bytes, int from, int to, byte[] out) {
        System.arraycopy(bytes, from, out, 0, to - from);
        return to - from;
    }

    @Override
    public String complaint(byte[] bytes, int from, int to) {
        return "";
    }

    @Override
    public byte[] stuff(byte[] content) {
        for (int i = 0; i < content.length; i++) {
            if (stands(end, content, i) || !start.isEmpty() && stands(start, content, i)) {
                throw new IllegalArgumentException("the content holds a mark at offset " + i
                        + ", and the framing has no escape for it: " + Ascii.hex(content, 0, content.length));
            }
        }
        return content;
    }

    private static boolean stands(ByteText mark, byte[] content, int at) {
        if (mark.length() > content.length - at) {
            return false;
        }
        for (int i = 0; i < mark.length(); i++) {
            if (content[at + i] != mark.at(i)) {
                return false;
            }
        }
        return true;
    }
}
