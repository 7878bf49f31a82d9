package settlemark.decode;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import settlemark.profile.Framing;

/** An escape byte and a code stand for each byte that must not occur. */
final class CodedEscapes implements Stuffing {
    private static final int NONE = -1;

    private final byte escape;
    /** By code: what it stands for. */
    private final int[] meanings = new int[256];
    /** By byte of content: its code. */
    private final int[] codes = new int[256];

    CodedEscapes(Framing.Stuffed stuffed) {
        escape = stuffed.escape();
        Arrays.fill(meanings, NONE);
        Arrays.fill(codes, NONE);
        for (int i = 0; i < stuffed.codes().size(); i++) {
            int code = stuffed.codes().get(i) & 0xFF;
            int meaning = stuffed.meanings().get(i) & 0xFF;
            meanings[code] = meaning;
            codes[meaning] = code;
        }
    }

    @Override
    public boolean joins(byte first, byte second) {
        return first == escape && meanings[second & 0xFF] != NONE;
    }

    @Override
    public boolean needsNext(byte first) {
        return first == escape;
    }

    @Override
    public int unstuff(byte[] bytes, int from, int to, byte[] out) {
        int length = 0;
        for (int i = from; i < to; i++) {
            byte content = bytes[i];
            if (content == escape) {
                int meaning = i + 1 < to ? meanings[bytes[i + 1] & 0xFF] : NONE;
                if (meaning == NONE) {
                    return -1;
                }
                content = (byte) meaning;
                i++;
            }
            out[length++] = content;
        }
        return length;
    }

    @Override
    public String complaint(byte[] bytes, int from, int to) {
        int i = from;
        while (i < to && !(bytes[i] == escape && (i + 1 == to || !joins(bytes[i], bytes[i + 1])))) {
            i += bytes[i] == escape ? 2 : 1;
        }
        return "escape " + Ascii.hex(bytes, i, Math.min(to, i + 2)) + " at byte " + (i - from) + " stands for nothing";
    }

    @Override
    public byte[] stuff(byte[] content) {
        ByteArrayOutputStream out = new ByteArrayOutputStream(2 * content.length);
        for (byte b : content) {
            int code = codes[b & 0xFF];
            if (code != NONE) {
                out.write(escape);
                out.write(code);
            } else {
                out.write(b);
            }
        }
        return out.toByteArray();
    }
}
