package settlemark.decode;

import java.io.ByteArrayOutputStream;
import settlemark.profile.ByteText;
import settlemark.profile.Framing;

/** An escape byte, and the byte that must not occur combined with another by exclusive or (RFC 1662, 4.2). */
final class FlippedEscapes implements Stuffing {
    private final byte escape;
    private final byte xor;
    private final boolean[] escaped = new boolean[256];

    /** Escapes itself and every byte of the marks. */
    FlippedEscapes(Framing.Flipped flipped, ByteText marks) {
        escape = flipped.escape();
        xor = flipped.xor();
        escaped[escape & 0xFF] = true;
        for (byte mark : marks.toBytes()) {
            escaped[mark & 0xFF] = true;
        }
    }

    @Override
    public int unstuff(byte[] bytes, int from, int to, byte[] out) {
        int length = 0;
        for (int i = from; i < to; i++) {
            byte content = bytes[i];
            if (content == escape) {
                if (++i == to) {
                    return -1;
                }
                content = (byte) (bytes[i] ^ xor);
            }
            out[length++] = content;
        }
        return length;
    }

    @Override
    public String complaint(byte[] bytes, int from, int to) {
        return "the frame was given up: it ends after the escape " + Ascii.hex(bytes, to - 1, to);
    }

    @Override
    public byte[] stuff(byte[] content) {
        ByteArrayOutputStream out = new ByteArrayOutputStream(2 * content.length);
        for (byte b : content) {
            if (escaped[b & 0xFF]) {
                out.write(escape);
                out.write(b ^ xor);
            } else {
                out.write(b);
            }
        }
        return out.toByteArray();
    }
}
