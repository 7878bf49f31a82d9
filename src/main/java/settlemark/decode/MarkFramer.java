package settlemark.decode;

import org.jspecify.annotations.Nullable;
import settlemark.profile.Framing;

/**
 * Frames that end with a mark, and may begin with one. A frame that is too long is rejected as soon as that is certain.
 * A start within a frame means that the end of the one before was lost. Where frames have no start mark, the first one
 * after a start or a gap may have lost its beginning: it only counts where something in it proves that it is whole.
 */
final class MarkFramer implements Framer {
    private static final int NO = 0;
    private static final int YES = 1;
    /** The bytes so far are the beginning of the mark. */
    private static final int PERHAPS = 2;

    private final byte[] start;
    private final byte[] end;
    private final Stuffing stuffing;
    private final int maximumBytes;
    private final boolean framesProveTheirStart;
    /** One mark both ends a frame and starts the next one. */
    private final boolean shared;

    private final byte[] content;
    /** The undecided bytes begin with a start mark. */
    private boolean inside;

    private boolean discarding;
    private boolean mayBeCut = true;
    /** Within stray bytes that are reported already. */
    private boolean straying;
    /** Bytes of the buffer's undecided part that hold no mark. */
    private int searched;

    private MarkFramer(byte[] start, byte[] end, Stuffing stuffing, int maximumBytes, boolean framesProveTheirStart) {
        this.start = start;
        this.end = end;
        this.stuffing = stuffing;
        this.maximumBytes = maximumBytes;
        this.framesProveTheirStart = framesProveTheirStart || start.length > 0;
        this.shared = java.util.Arrays.equals(start, end);
        this.content = new byte[maximumBytes];
    }

    static MarkFramer of(Framing.Marked marked, boolean framesProveTheirStart) {
        return new MarkFramer(
                marked.start().toBytes(),
                marked.end().toBytes(),
                Stuffing.of(marked),
                marked.maximumBytes(),
                framesProveTheirStart);
    }

    static MarkFramer of(Framing.Cobs cobs, boolean framesProveTheirStart) {
        return new MarkFramer(
                new byte[0], new byte[1], new OverheadStuffing(), cobs.maximumBytes(), framesProveTheirStart);
    }

    @Override
    public void scan(FrameBuffer buffer, FrameSink sink) {
        while (inside || open(buffer, sink)) {
            if (!close(buffer, sink)) {
                return;
            }
        }
    }

    @Override
    public void reset() {
        inside = false;
        discarding = false;
        mayBeCut = true;
        straying = false;
        searched = 0;
    }

    @Override
    public void begin() {
        mayBeCut = false;
    }

    @Override
    public int undecided(FrameBuffer buffer) {
        return shared && inside && buffer.length() == start.length ? 0 : buffer.length();
    }

    /** Goes to the next start mark; false where it has not come yet. */
    private boolean open(FrameBuffer buffer, FrameSink sink) {
        while (start.length > 0) {
            int match = match(start, buffer, buffer.from);
            if (match == PERHAPS) {
                return false;
            }
            if (match == YES) {
                break;
            }
            stray(buffer, sink);
        }
        inside = true;
        searched = start.length;
        return true;
    }

    private void stray(FrameBuffer buffer, FrameSink sink) {
        if (!straying) {
            sink.rejected(
                    buffer.timeNanos(buffer.from),
                    buffer.offset(buffer.from),
                    "stray bytes from " + Ascii.hex(buffer.bytes, buffer.from, buffer.from + 1)
                            + " where a frame starts with " + Ascii.hex(start, 0, start.length));
            straying = true;
        }
        buffer.from++;
    }

    /** Goes to the frame's end; false where it has not come yet. */
    private boolean close(FrameBuffer buffer, FrameSink sink) {
        int at = nextMark(buffer);
        int endMatch = match(end, buffer, at);
        boolean ends = endMatch == YES;
        boolean restarts = endMatch == NO && startsAgain(buffer, at) == YES;
        searched = at - buffer.from;
        int known = ends ? searched + end.length : restarts ? searched + start.length : buffer.length() + 1;
        if (!discarding && known > maximumBytes) {
            tooLong(buffer, sink);
            return true;
        }
        if (ends) {
            ended(buffer, at, sink);
        } else if (restarts) {
            sink.rejected(
                    buffer.timeNanos(at + start.length - 1),
                    buffer.offset(buffer.from),
                    "the frame has no end: another starts at its byte " + (at - buffer.from));
            buffer.from = at;
            searched = start.length;
        } else if (discarding) {
            buffer.from = at;
            searched = 0;
        }
        return ends || restarts;
    }

    /** Index of the next mark, or of the first byte that must wait for more before it is known to be none. */
    private int nextMark(FrameBuffer buffer) {
        byte[] bytes = buffer.bytes;
        int i = buffer.from + searched;
        while (i < buffer.to) {
            if (match(end, buffer, i) != NO || startsAgain(buffer, i) != NO) {
                return i;
            }
            if (stuffing.needsNext(bytes[i])) {
                if (i + 1 == buffer.to) {
                    return i;
                }
                i += stuffing.joins(bytes[i], bytes[i + 1]) ? 2 : 1;
            } else {
                i++;
            }
        }
        return i;
    }

    private int startsAgain(FrameBuffer buffer, int at) {
        return start.length == 0 || shared ? NO : match(start, buffer, at);
    }

    private static int match(byte[] mark, FrameBuffer buffer, int at) {
        int compared = Math.min(mark.length, buffer.to - at);
        for (int i = 0; i < compared; i++) {
            if (buffer.bytes[at + i] != mark[i]) {
                return NO;
            }
        }
        return compared == mark.length ? YES : PERHAPS;
    }

    private void tooLong(FrameBuffer buffer, FrameSink sink) {
        sink.rejected(
                buffer.timeNanos(buffer.from + maximumBytes - 1),
                buffer.offset(buffer.from),
                "the frame is longer than " + maximumBytes + " bytes");
        if (start.length == 0) {
            discarding = true;
            return;
        }
        // None of the bytes starts a frame, but the last ones may begin a start mark.
        buffer.from += maximumBytes - start.length + 1;
        inside = false;
        straying = true;
    }

    private void ended(FrameBuffer buffer, int at, FrameSink sink) {
        int from = buffer.from + start.length;
        if (!discarding && at > from) {
            long timeNanos = buffer.timeNanos(at + end.length - 1);
            long offset = buffer.offset(buffer.from);
            @Nullable String reason = frame(buffer.bytes, from, at, timeNanos, offset, sink);
            if (reason != null) {
                sink.rejected(timeNanos, offset, reason);
            }
        }
        buffer.from = shared ? at : at + end.length;
        inside = false;
        discarding = false;
        mayBeCut = false;
        straying = false;
    }

    private @Nullable String frame(byte[] bytes, int from, int to, long timeNanos, long offset, FrameSink sink) {
        if (mayBeCut && !framesProveTheirStart) {
            return "the first frame may have lost its beginning";
        }
        int length = stuffing.unstuff(bytes, from, to, content);
        if (length < 0) {
            return stuffing.complaint(bytes, from, to);
        }
        return length == 0 ? null : sink.frame(content, 0, length, timeNanos, offset);
    }
}
