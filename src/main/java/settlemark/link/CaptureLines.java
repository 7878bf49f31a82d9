package settlemark.link;

import java.io.IOException;
import java.io.Reader;

/** Cuts a capture into lines of limited length; longer ones are skipped to their end. */
final class CaptureLines {
    private static final int BUFFER_CHARACTERS = 8192;
    private static final char BYTE_ORDER_MARK = '\uFEFF';

    private final Reader in;
    private final int limit;
    private final char[] buffer = new char[BUFFER_CHARACTERS];
    private final StringBuilder line = new StringBuilder();
    private int from;
    private int to;
    private long number;
    private boolean tooLong;
    private boolean terminated;

    CaptureLines(Reader in, int limit) {
        this.in = in;
        this.limit = limit;
    }

    /** Goes on to the next line; false at the end. */
    boolean next() throws IOException {
        line.setLength(0);
        tooLong = false;
        terminated = false;
        boolean any = false;
        while (!terminated && fill()) {
            any = true;
            take();
        }
        if (any) {
            number++;
        }
        return any;
    }

    private boolean fill() throws IOException {
        if (from == to) {
            from = 0;
            to = Math.max(0, in.read(buffer, 0, buffer.length));
        }
        return from < to;
    }

    private void take() {
        int end = from;
        while (end < to && buffer[end] != '\n') {
            end++;
        }
        int room = Math.min(end - from, limit - line.length());
        line.append(buffer, from, room);
        tooLong |= room < end - from;
        terminated = end < to;
        from = terminated ? end + 1 : end;
    }

    /** Without its end; of a line that is too long only the beginning. */
    String text() {
        int end = line.length();
        if (end > 0 && line.charAt(end - 1) == '\r') {
            end--;
        }
        int begin = number == 1 && end > 0 && line.charAt(0) == BYTE_ORDER_MARK ? 1 : 0;
        return line.substring(begin, end);
    }

    /** From 1. */
    long number() {
        return number;
    }

    boolean tooLong() {
        return tooLong;
    }

    /** False for a last line without an end. */
    boolean terminated() {
        return terminated;
    }
}
