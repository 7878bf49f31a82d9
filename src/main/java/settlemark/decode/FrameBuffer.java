package settlemark.decode;

import java.util.Arrays;

/**
 * The part of the stream that is not yet decided, with the arrival time of every byte. Bounded: holds at most twice
 * the longest frame, or 4 kB.
 */
final class FrameBuffer {
    private static final int LEAST_CAPACITY = 4096;

    final byte[] bytes;
    /** First undecided byte. */
    int from;
    /** After the last byte. */
    int to;
    /** Stream offset of {@code bytes[0]}. */
    private long base;

    /** Chunks that the undecided bytes came in: stream offset after the last byte, and arrival time. */
    private long[] ends = new long[8];

    private long[] times = new long[8];
    private int marks;

    FrameBuffer(int maximumFrameBytes) {
        bytes = new byte[Math.max(2 * maximumFrameBytes, LEAST_CAPACITY)];
    }

    /** Takes as many bytes as there is room for, at least one. */
    int append(byte[] source, int offset, long timeNanos) {
        if (from == to) {
            base += from;
            from = 0;
            to = 0;
        } else if (source.length - offset > bytes.length - to) {
            compact();
        }
        int count = Math.min(source.length - offset, bytes.length - to);
        System.arraycopy(source, offset, bytes, to, count);
        to += count;
        mark(base + to, timeNanos);
        return count;
    }

    int length() {
        return to - from;
    }

    /** Stream offset of an index into the bytes. */
    long offset(int index) {
        return base + index;
    }

    /** Arrival time of the byte at an index. */
    long timeNanos(int index) {
        long offset = base + index;
        for (int i = 0; i < marks; i++) {
            if (offset < ends[i]) {
                return times[i];
            }
        }
        throw new IndexOutOfBoundsException(index);
    }

    /** Forgets the undecided bytes; the stream goes on counting. */
    void clear() {
        base += to;
        from = 0;
        to = 0;
        marks = 0;
    }

    private void compact() {
        System.arraycopy(bytes, from, bytes, 0, to - from);
        base += from;
        to -= from;
        from = 0;
    }

    private void mark(long end, long timeNanos) {
        int passed = 0;
        while (passed < marks && ends[passed] <= base + from) {
            passed++;
        }
        if (passed > 0) {
            marks -= passed;
            System.arraycopy(ends, passed, ends, 0, marks);
            System.arraycopy(times, passed, times, 0, marks);
        }
        if (marks > 0 && times[marks - 1] == timeNanos) {
            ends[marks - 1] = end;
            return;
        }
        if (marks == ends.length) {
            ends = Arrays.copyOf(ends, 2 * marks);
            times = Arrays.copyOf(times, 2 * marks);
        }
        ends[marks] = end;
        times[marks++] = timeNanos;
    }
}
