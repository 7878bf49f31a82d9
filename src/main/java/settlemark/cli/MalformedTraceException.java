package settlemark.cli;

/** A trace that cannot be read as one; the message says where, what, and the remedy. */
final class MalformedTraceException extends Exception {
    private static final long serialVersionUID = 1L;

    MalformedTraceException(String where, long line, String what) {
        super(where + ":" + line + ": " + what);
    }
}
