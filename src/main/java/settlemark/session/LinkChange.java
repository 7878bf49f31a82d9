package settlemark.session;

/** What became of a link. */
public enum LinkChange {
    UP,
    /** Bytes may be missing from here on; what was half received is dropped. */
    LOST,
    BACK,
    /** Bytes were dropped because the program could not keep up. */
    OVERRUN,
    ENDED
}
