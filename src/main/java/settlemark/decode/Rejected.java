package settlemark.decode;

/**
 * Bytes that were no frame.
 *
 * @param timeNanos session time of the chunk in which the last of them arrived
 * @param offset of the first of them in the probe's stream, from 0
 * @param reason in words
 */
public record Rejected(long timeNanos, long offset, String reason) {}
