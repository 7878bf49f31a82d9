package settlemark.decode;

import java.util.Objects;

/**
 * Bytes that are no good frame.
 *
 * @param timeNanos session time at which the byte arrived that settled it
 * @param offset of the first bad byte in the stream, from 0
 * @param reason what was found and what was expected
 */
public record Rejected(long timeNanos, long offset, String reason) {
    public Rejected {
        Objects.requireNonNull(reason);
    }
}
