package settlemark.document;

/**
 * How large a document may be before it is refused unread.
 *
 * @param maximumBytes of its text
 * @param maximumNesting of lists and mappings within each other
 * @param maximumNodes values in the whole document
 */
public record DocumentLimits(int maximumBytes, int maximumNesting, int maximumNodes) {
    /** 1 MiB, 20 levels, 100,000 values. */
    public static final DocumentLimits DEFAULT = new DocumentLimits(1 << 20, 20, 100_000);

    public DocumentLimits {
        if (maximumBytes < 1 || maximumNesting < 1 || maximumNodes < 1) {
            throw new IllegalArgumentException("a limit is at least 1");
        }
    }
}
