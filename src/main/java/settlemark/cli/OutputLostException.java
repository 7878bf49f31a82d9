package settlemark.cli;

/** Nobody reads any more, or the disk is full. */
final class OutputLostException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    static final String WORDS = "the output cannot be written any more (disk full, or its reader ended): stopped";
}
