package settlemark.decode;

import org.jspecify.annotations.Nullable;
import settlemark.profile.Framing;

/**
 * Lines with an end delimiter. A line that is too long is rejected as soon as that is certain, and the bytes up to its
 * end are discarded. The first line after a start may have lost its beginning, and a number cut short is still a
 * number: it only counts where something in the line proves that it is whole.
 */
final class LineFramer implements Framer {
    private final byte[] end;
    private final int maximumBytes;
    private final boolean linesProveTheirStart;
    private boolean discarding;
    private boolean mayBeCut = true;
    /** Bytes of the buffer's undecided part that hold no delimiter. */
    private int searched;

    LineFramer(Framing.Line framing, boolean linesProveTheirStart) {
        this.end = framing.end().toBytes();
        this.maximumBytes = framing.maximumBytes();
        this.linesProveTheirStart = linesProveTheirStart;
    }

    @Override
    public void scan(FrameBuffer buffer, FrameSink sink) {
        while (true) {
            int delimiter = find(buffer);
            int known = delimiter < 0 ? buffer.to : delimiter + end.length;
            if (!discarding && known - buffer.from > maximumBytes - (delimiter < 0 ? 1 : 0)) {
                int decisive = buffer.from + maximumBytes - 1;
                sink.rejected(
                        buffer.timeNanos(decisive),
                        buffer.offset(buffer.from),
                        "the line is longer than " + maximumBytes + " bytes");
                discarding = true;
            }
            if (delimiter < 0) {
                keepUndecided(buffer);
                return;
            }
            if (!discarding) {
                line(buffer, delimiter, sink);
            }
            discarding = false;
            mayBeCut = false;
            searched = 0;
            buffer.from = delimiter + end.length;
        }
    }

    @Override
    public void reset() {
        discarding = false;
        mayBeCut = true;
        searched = 0;
    }

    @Override
    public void begin() {
        mayBeCut = false;
    }

    @Override
    public int undecided(FrameBuffer buffer) {
        return buffer.length();
    }

    private void line(FrameBuffer buffer, int delimiter, FrameSink sink) {
        if (Ascii.skipBlanks(buffer.bytes, buffer.from, delimiter) == delimiter) {
            return;
        }
        long timeNanos = buffer.timeNanos(delimiter + end.length - 1);
        @Nullable
        String reason = mayBeCut && !linesProveTheirStart
                ? "the first line may have lost its beginning"
                : sink.frame(buffer.bytes, buffer.from, delimiter, timeNanos, buffer.offset(buffer.from));
        if (reason != null) {
            sink.rejected(timeNanos, buffer.offset(buffer.from), reason);
        }
    }

    private void keepUndecided(FrameBuffer buffer) {
        int tail = Math.min(buffer.length(), end.length - 1);
        if (discarding) {
            buffer.from = buffer.to - tail;
            searched = 0;
        } else {
            searched = buffer.length() - tail;
        }
    }

    /** Index of the next delimiter, -1 where there is none yet. */
    private int find(FrameBuffer buffer) {
        byte[] bytes = buffer.bytes;
        int last = buffer.to - end.length;
        for (int i = buffer.from + searched; i <= last; i++) {
            if (bytes[i] == end[0] && matches(bytes, i)) {
                return i;
            }
        }
        return -1;
    }

    private boolean matches(byte[] bytes, int at) {
        for (int i = 1; i < end.length; i++) {
            if (bytes[at + i] != end[i]) {
                return false;
            }
        }
        return true;
    }
}
