package settlemark.measure;

import java.util.Arrays;

/**
 * Bytes as they arrived from a probe, with the session time at which they arrived. The bytes are the truth; samples
 * are derived from them. The array is not copied: whoever makes a chunk gives the array away.
 *
 * @param timeNanos session time of arrival in nanoseconds (monotonic, 0 at the session's start)
 * @param bytes what arrived, at least one byte
 */
public record Chunk(long timeNanos, byte[] bytes) {
    public Chunk {
        if (bytes.length == 0) {
            throw new IllegalArgumentException("a chunk holds at least one byte");
        }
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Chunk chunk && chunk.timeNanos == timeNanos && Arrays.equals(chunk.bytes, bytes);
    }

    @Override
    public int hashCode() {
        return 31 * Long.hashCode(timeNanos) + Arrays.hashCode(bytes);
    }

    @Override
    public String toString() {
        return "Chunk[" + timeNanos + " ns, " + bytes.length + " bytes]";
    }
}
