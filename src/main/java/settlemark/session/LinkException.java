package settlemark.session;

/** A probe or port cannot be reached; the message says what, why and the remedy. */
public final class LinkException extends Exception {
    private static final long serialVersionUID = 1L;

    public LinkException(String message) {
        super(message);
    }

    public LinkException(String message, Throwable cause) {
        super(message, cause);
    }
}
