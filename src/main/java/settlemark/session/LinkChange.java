package settlemark.session;

/** What became of a link. */
public enum LinkChange {
    UP,
    /** Bytes may be missing from here on; what was half received is dropped. */
    LOST,
    BACK,
    /** Something worth knowing that changes nothing about the bytes, such as another master on the line. */
    NOTED,
    /** Bytes were dropped because the program could not keep up. */
    OVERRUN,
    ENDED
}
