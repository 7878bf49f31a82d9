package settlemark.cli;

/** A trace that cannot be read as one; the message says where, what, and the remedy. */
final class MalformedTraceException extends Exception {
    private static final long serialVersionUID = 1L;

    private final String message;

    MalformedTraceException(String where, long line, String what) {
        super(where + ":" + line + ": " + what);
        message = where + ":" + line + ": " + what;
    }

    /** The message, which is always there. */
    String message() {
        return message;
    }
}
