package settlemark.exchange;

import java.util.Arrays;
import java.util.function.Consumer;
import settlemark.measure.Chunk;

/** What has come since a question, with the time of each piece; holds the longest frame and what may stand around it. */
final class Inbox {
    private static final int MOST_BYTES = 2 << 16;

    private byte[] bytes = new byte[512];
    private int size;
    private int[] ends = new int[16];
    private long[] times = new long[16];
    private int pieces;

    byte[] bytes() {
        return bytes;
    }

    int size() {
        return size;
    }

    /** Returns false where there is no room: then nobody is answering, somebody is talking. */
    boolean add(long timeNanos, byte[] source, int from, int to) {
        int count = to - from;
        if (size + count > MOST_BYTES) {
            return false;
        }
        if (size + count > bytes.length) {
            bytes = Arrays.copyOf(bytes, Math.max(size + count, 2 * bytes.length));
        }
        System.arraycopy(source, from, bytes, size, count);
        size += count;
        if (pieces == ends.length) {
            ends = Arrays.copyOf(ends, 2 * pieces);
            times = Arrays.copyOf(times, 2 * pieces);
        }
        ends[pieces] = size;
        times[pieces++] = timeNanos;
        return true;
    }

    /** One chunk for each piece, with its own time. */
    void hand(int from, int to, int input, Consumer<Chunk> onward) {
        int at = from;
        for (int i = 0; i < pieces && at < to; i++) {
            int end = Math.min(ends[i], to);
            if (end > at) {
                onward.accept(new Chunk(times[i], input, Arrays.copyOfRange(bytes, at, end)));
                at = end;
            }
        }
    }

    void clear() {
        size = 0;
        pieces = 0;
    }
}
