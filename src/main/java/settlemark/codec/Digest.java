package settlemark.codec;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.zip.CRC32C;

/** CRC-32C (RFC 3720, appendix B.4) behind the bytes it is of. */
final class Digest {
    static final int BYTES = Integer.BYTES;

    private Digest() {}

    /**
     * The bytes with their digest behind.
     *
     * @param of what else the digest is of, so that bytes at another's place are noticed
     */
    static byte[] sign(byte[] bytes, long of) {
        ByteBuffer signed = ByteBuffer.allocate(bytes.length + BYTES).order(ByteOrder.LITTLE_ENDIAN);
        signed.put(bytes).putInt(digest(bytes, 0, bytes.length, of));
        return signed.array();
    }

    /** Whether the bytes are followed by their digest. */
    static boolean signed(byte[] bytes, int from, int length, long of) {
        int said = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).getInt(from + length);
        return said == digest(bytes, from, length, of);
    }

    private static int digest(byte[] bytes, int from, int length, long of) {
        CRC32C crc = new CRC32C();
        crc.update(ByteBuffer.allocate(Long.BYTES).putLong(0, of));
        crc.update(bytes, from, length);
        return (int) crc.getValue();
    }
}
