package settlemark.measure;

import java.util.Arrays;
import java.util.Objects;

/**
 * Bytes as they arrived from a probe, with the session time at which they arrived. The bytes are the truth; samples
 * are derived from them. The array is not copied: whoever makes a chunk gives the array away.
 *
 * @param timeNanos session time of arrival in nanoseconds (monotonic, 0 at the session's start)
 * @param input where they came from: index in the profile's inputs, or {@link #STRAY}
 * @param bytes what arrived, at least one byte
 */
public record Chunk(long timeNanos, int input, byte[] bytes) {
    /** Bytes that belong to no input, such as a late answer or another master's request. */
    public static final int STRAY = -1;

    public Chunk {
        if (bytes.length == 0) {
            throw new IllegalArgumentException("a chunk holds at least one byte");
        }
        if (input < STRAY) {
            throw new IllegalArgumentException("a chunk comes from input 0 or later, or is stray; got " + input);
        }
    }

    /** Bytes of the first input, the only one of most profiles. */
    public Chunk(long timeNanos, byte[] bytes) {
        this(timeNanos, 0, bytes);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Chunk chunk
                && chunk.timeNanos == timeNanos
                && chunk.input == input
                && Arrays.equals(chunk.bytes, bytes);
    }

    @Override
    public int hashCode() {
        return Objects.hash(timeNanos, input, Arrays.hashCode(bytes));
    }

    @Override
    public String toString() {
        return "Chunk[" + timeNanos + " ns, input " + input + ", " + bytes.length + " bytes]";
    }
}
