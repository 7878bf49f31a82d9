package settlemark.exchange;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import settlemark.decode.ChecksumCheck;
import settlemark.profile.ByteText;
import settlemark.profile.Framing;

/**
 * Frames between marks. Escaped bytes never look like a mark, so the first end after a start ends the frame; an empty
 * frame is passed over, and so is one whose checksum, over what the escapes stand for, is wrong.
 */
record MarkedScan(Framing.Marked marks, Optional<ChecksumCheck> check) implements FrameScan {
    /** A frame ends with its zero; what stands before it is checked by the decoder. */
    static MarkedScan of(Framing.Cobs cobs) {
        return new MarkedScan(
                new Framing.Marked(ByteText.EMPTY, ByteText.ofHex("00"), new Framing.Plain(), cobs.maximumBytes()),
                Optional.empty());
    }

    @Override
    public Look find(byte[] bytes, int from, int to) {
        byte[] start = marks.start().toBytes();
        byte[] end = marks.end().toBytes();
        int at = from;
        while (at < to) {
            int opened = Search.indexOf(bytes, at, to, start);
            int content = opened + start.length;
            int closed = opened < 0 ? -1 : Search.indexOf(bytes, content, to, end);
            if (closed < 0) {
                return Look.MORE;
            }
            if (closed > content
                    && closed + end.length - opened <= marks.maximumBytes()
                    && good(bytes, content, closed)) {
                return Look.good(opened, closed + end.length);
            }
            // One mark may end a frame and open the next.
            at = marks.start().equals(marks.end()) ? Math.max(closed, opened + 1) : closed + end.length;
        }
        return Look.MORE;
    }

    private boolean good(byte[] bytes, int from, int to) {
        if (check.isEmpty()) {
            return true;
        }
        byte[] plain = unescaped(bytes, from, to);
        return plain.length > 0 && FrameScan.isGood(check, plain, 0, plain.length);
    }

    /** What the content stands for; empty where an escape stands for nothing. */
    private byte[] unescaped(byte[] bytes, int from, int to) {
        byte[] plain = new byte[to - from];
        int length = 0;
        for (int i = from; i < to; i++) {
            int value = bytes[i];
            if (escape() == value) {
                i++;
                value = i < to ? meaning(bytes[i]) : Integer.MIN_VALUE;
            }
            if (value == Integer.MIN_VALUE) {
                return new byte[0];
            }
            plain[length++] = (byte) value;
        }
        return Arrays.copyOf(plain, length);
    }

    private int escape() {
        if (marks.escaping() instanceof Framing.Stuffed stuffed) {
            return stuffed.escape();
        }
        return marks.escaping() instanceof Framing.Flipped flipped ? flipped.escape() : Integer.MAX_VALUE;
    }

    private int meaning(byte code) {
        if (marks.escaping() instanceof Framing.Flipped flipped) {
            return code ^ flipped.xor();
        }
        Framing.Stuffed stuffed = (Framing.Stuffed) marks.escaping();
        List<Byte> codes = stuffed.codes();
        int index = codes.indexOf(code);
        return index < 0 ? Integer.MIN_VALUE : stuffed.meanings().get(index);
    }
}
