package settlemark.session;

/** A stretch of session time, both ends in nanoseconds. */
public record Span(long fromNanos, long toNanos) {}
