package settlemark.link;

/** Why a probe cannot be had now, in a sentence with the remedy. */
final class BleFault extends Exception {
    private static final long serialVersionUID = 1L;

    private final boolean lasting;

    private BleFault(String words, boolean lasting) {
        super(words);
        this.lasting = lasting;
    }

    /** May pass by itself. */
    static BleFault passing(String words) {
        return new BleFault(words, false);
    }

    /** Stays until somebody does something. */
    static BleFault lasting(String words) {
        return new BleFault(words, true);
    }

    boolean isLasting() {
        return lasting;
    }

    String words() {
        return String.valueOf(getMessage());
    }
}
