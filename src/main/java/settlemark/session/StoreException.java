package settlemark.session;

/** The workspace cannot be read or written; the message says what, where and the remedy. */
public final class StoreException extends Exception {
    private static final long serialVersionUID = 1L;

    /** What a script needs to know. */
    public enum Cause {
        /** Cannot be opened or written: permission, missing folder, full disk, second writer. */
        FAULT,
        /** Is not a workspace, is damaged, or comes from a newer version. */
        DAMAGED
    }

    private final Cause kind;

    public StoreException(Cause kind, String message) {
        super(message);
        this.kind = kind;
    }

    public StoreException(Cause kind, String message, Throwable cause) {
        super(message, cause);
        this.kind = kind;
    }

    public Cause kind() {
        return kind;
    }
}
