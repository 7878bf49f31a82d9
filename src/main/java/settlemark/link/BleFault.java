package settlemark.link;

import org.jspecify.annotations.Nullable;

/** Why a probe cannot be had now, in a sentence with the remedy. */
final class BleFault extends Exception {
    private static final long serialVersionUID = 1L;

    private final boolean lasting;

    private BleFault(String words, boolean lasting, @Nullable Throwable cause) {
        super(words, cause);
        this.lasting = lasting;
    }

    /** May pass by itself. */
    static BleFault passing(String words) {
        return new BleFault(words, false, null);
    }

    /** Stays until somebody does something. */
    static BleFault lasting(String words) {
        return new BleFault(words, true, null);
    }

    /** Stays, for the reason that another part gives in its message. */
    static BleFault lasting(Exception cause) {
        return new BleFault(String.valueOf(cause.getMessage()), true, cause);
    }

    boolean isLasting() {
        return lasting;
    }

    String words() {
        return String.valueOf(getMessage());
    }
}
