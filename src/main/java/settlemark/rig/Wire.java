package settlemark.rig;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Chunk;

/**
 * The line between an instrument and its reader. Bytes take their time at the line's speed; the reader looks at
 * irregular moments, as operating systems do, and takes what is there. So a chunk holds a part of a frame, or the end of
 * one and the start of the next.
 */
final class Wire {
    /** Start bit, eight data bits, stop bit. */
    private static final long BITS_PER_BYTE = 10;

    private static final int LONGEST_LOOK_NANOS = 30_000_000;
    private static final int SHORTEST_LOOK_NANOS = 1_000_000;

    private final long byteNanos;
    private final Random random;
    private final ArrayDeque<Sending> sendings = new ArrayDeque<>();
    private long freeNanos;
    private long nextLookNanos;

    /** Bytes that go out one after the other from a moment on; the first {@code taken} have been read. */
    private record Sending(long startNanos, byte[] bytes, int taken) {}

    Wire(int baud, Random random) {
        byteNanos = BITS_PER_BYTE * 1_000_000_000L / baud;
        this.random = random;
    }

    void send(long timeNanos, byte[] bytes) {
        long start = Math.max(timeNanos, freeNanos);
        freeNanos = start + bytes.length * byteNanos;
        sendings.add(new Sending(start, bytes, 0));
    }

    long nextLookNanos() {
        return nextLookNanos;
    }

    /** The reader looks once; null where nothing has arrived since the last time. */
    @Nullable
    Chunk look() {
        long nowNanos = nextLookNanos;
        nextLookNanos += SHORTEST_LOOK_NANOS + random.nextInt(LONGEST_LOOK_NANOS - SHORTEST_LOOK_NANOS);
        byte[] got = new byte[0];
        while (!sendings.isEmpty()) {
            Sending sending = sendings.element();
            long whole = Math.max(0, (nowNanos - sending.startNanos) / byteNanos);
            int arrived = (int) Math.min(sending.bytes.length, whole);
            got = append(got, sending.bytes, sending.taken, arrived);
            sendings.remove();
            if (arrived < sending.bytes.length) {
                sendings.addFirst(new Sending(sending.startNanos, sending.bytes, arrived));
                break;
            }
        }
        return got.length == 0 ? null : new Chunk(nowNanos, got);
    }

    private static byte[] append(byte[] head, byte[] from, int start, int end) {
        if (start == end) {
            return head;
        }
        byte[] all = Arrays.copyOf(head, head.length + end - start);
        System.arraycopy(from, start, all, head.length, end - start);
        return all;
    }
}
