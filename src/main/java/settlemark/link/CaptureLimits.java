package settlemark.link;

/**
 * How much of a capture is taken in at once. A capture of any length is read in the same little memory.
 *
 * @param lineCharacters longest line; a frame of 64 KiB in hexadecimal pairs with blanks fits
 * @param probes whose bytes one capture holds
 * @param problems that are told one by one; further ones are only counted
 */
record CaptureLimits(int lineCharacters, int probes, int problems) {
    static final CaptureLimits DEFAULT = new CaptureLimits(200_000, 64, 100);

    CaptureLimits {
        if (lineCharacters < 1 || probes < 1 || problems < 1) {
            throw new IllegalArgumentException("a limit is at least 1");
        }
    }
}
