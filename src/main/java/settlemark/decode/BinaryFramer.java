package settlemark.decode;

import org.jspecify.annotations.Nullable;
import settlemark.profile.Framing;

/**
 * Binary frames. After a bad one the search for a start goes on within its bytes, so that a good frame behind a
 * corrupted length is not lost. One loss of step is reported once: a false start within bytes that are already
 * rejected adds nothing to the count. The search has an end: bytes made to look like many long frames cost no more
 * than a few times their length.
 */
final class BinaryFramer implements Framer {
    /** Most bytes of wrong frames that are looked through within one rejected range, beside twice its length. */
    private static final int SEARCHED_BYTES = 1 << 18;

    private final byte[] start;
    private final FrameLength length;
    /** Stream offset up to which bytes are already reported as rejected. */
    private long rejectedUpTo;
    /** Bytes of wrong frames that were looked through since the last rejection was reported. */
    private long searchedBytes;
    /** Within stray bytes that are reported already. */
    private boolean straying;

    BinaryFramer(byte[] start, FrameLength length) {
        this.start = start;
        this.length = length;
    }

    static BinaryFramer of(Framing framing, int leastBytes) {
        if (framing instanceof Framing.LengthField field) {
            return new BinaryFramer(field.start().toBytes(), new FrameLength.Said(field, leastBytes));
        }
        Framing.Fixed fixed = (Framing.Fixed) framing;
        return new BinaryFramer(fixed.start().toBytes(), new FrameLength.Always(fixed.maximumBytes()));
    }

    @Override
    public void scan(FrameBuffer buffer, FrameSink sink) {
        while (buffer.from < buffer.to) {
            int compared = Math.min(start.length, buffer.length());
            if (!startsAt(buffer, compared)) {
                stray(buffer, sink);
            } else if (buffer.length() < length.headerBytes() || !candidate(buffer, sink)) {
                return;
            }
        }
    }

    @Override
    public void reset() {
        straying = false;
    }

    @Override
    public void begin() {
        straying = false;
    }

    @Override
    public int undecided(FrameBuffer buffer) {
        return buffer.length();
    }

    private boolean startsAt(FrameBuffer buffer, int compared) {
        for (int i = 0; i < compared; i++) {
            if (buffer.bytes[buffer.from + i] != start[i]) {
                return false;
            }
        }
        return true;
    }

    private void stray(FrameBuffer buffer, FrameSink sink) {
        long offset = buffer.offset(buffer.from);
        if (!straying && offset >= rejectedUpTo) {
            sink.rejected(
                    buffer.timeNanos(buffer.from),
                    offset,
                    "stray bytes from " + Ascii.hex(buffer.bytes, buffer.from, buffer.from + 1)
                            + " where a frame starts with " + Ascii.hex(start, 0, start.length));
            straying = true;
        }
        buffer.from++;
    }

    /** Decides the frame that may start here; false where more bytes are needed. */
    private boolean candidate(FrameBuffer buffer, FrameSink sink) {
        int bytes = length.of(buffer.bytes, buffer.from);
        if (bytes < 0) {
            int header = length.headerBytes();
            reject(buffer, header, length.complaint(buffer.bytes, buffer.from), sink);
            return true;
        }
        if (buffer.length() < bytes) {
            return false;
        }
        int to = buffer.from + bytes;
        @Nullable
        String reason = sink.frame(buffer.bytes, buffer.from, to, buffer.timeNanos(to - 1), buffer.offset(buffer.from));
        if (reason == null) {
            straying = false;
            buffer.from = to;
        } else {
            reject(buffer, bytes, reason, sink);
        }
        return true;
    }

    private void reject(FrameBuffer buffer, int bytes, String reason, FrameSink sink) {
        long offset = buffer.offset(buffer.from);
        if (offset >= rejectedUpTo) {
            sink.rejected(buffer.timeNanos(buffer.from + bytes - 1), offset, reason);
            rejectedUpTo = offset + bytes;
            searchedBytes = 0;
            straying = true;
        }
        searchedBytes += bytes;
        boolean exhausted = searchedBytes > SEARCHED_BYTES + 2L * bytes;
        buffer.from += exhausted ? (int) (rejectedUpTo - offset) : 1;
    }
}
