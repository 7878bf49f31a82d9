package settlemark.seal;

/** A seal or its key cannot be read; the message says which, and the remedy. */
public final class SealException extends Exception {
    private static final long serialVersionUID = 1L;

    SealException(String message) {
        super(message);
    }

    SealException(String message, Throwable cause) {
        super(message, cause);
    }
}
