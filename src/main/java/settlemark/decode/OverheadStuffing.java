package settlemark.decode;

import java.io.ByteArrayOutputStream;

/**
 * Consistent overhead byte stuffing: each zero of the content is replaced by the distance to the next one (S. Cheshire,
 * M. Baker, IEEE/ACM Transactions on Networking 7 (2), 1999).
 */
final class OverheadStuffing implements Stuffing {
    /** A block of so many bytes without a zero behind it. */
    private static final int FULL_BLOCK = 0xFF;

    @Override
    public int unstuff(byte[] bytes, int from, int to, byte[] out) {
        int length = 0;
        int at = from;
        while (at < to) {
            int block = bytes[at] & 0xFF;
            int next = at + block;
            if (block == 0 || next > to) {
                return -1;
            }
            System.arraycopy(bytes, at + 1, out, length, block - 1);
            length += block - 1;
            if (block < FULL_BLOCK && next < to) {
                out[length++] = 0;
            }
            at = next;
        }
        return length;
    }

    @Override
    public String complaint(byte[] bytes, int from, int to) {
        int at = from;
        while (at + (bytes[at] & 0xFF) <= to) {
            at += bytes[at] & 0xFF;
        }
        return "a block of " + (bytes[at] & 0xFF) + " bytes at byte " + (at - from) + " where the frame has "
                + (to - at);
    }

    @Override
    public byte[] stuff(byte[] content) {
        ByteArrayOutputStream out = new ByteArrayOutputStream(content.length + content.length / 254 + 1);
        int start = 0;
        while (true) {
            int i = start;
            while (i < content.length && content[i] != 0 && i - start < FULL_BLOCK - 1) {
                i++;
            }
            out.write(i - start + 1);
            out.write(content, start, i - start);
            if (i == content.length) {
                return out.toByteArray();
            }
            // Behind a full block no zero is meant.
            start = i - start == FULL_BLOCK - 1 ? i : i + 1;
        }
    }
}
