package settlemark.session;

/**
 * What came of reading a capture.
 *
 * @param events that were handed on
 * @param damagedLines that could not be used as they stand; not all of them need have been told one by one
 * @param whole it ends as a capture that was closed
 */
public record CaptureReading(long events, long damagedLines, boolean whole) {
    public boolean damaged() {
        return damagedLines > 0;
    }
}
