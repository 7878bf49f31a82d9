package settlemark.decode;

import org.jspecify.annotations.Nullable;
import settlemark.profile.Cipher;
import settlemark.profile.Secrets;

/** Opens and closes protected frames. */
sealed interface FrameCipher permits BthomeCipher {
    static FrameCipher of(Cipher cipher, Secrets secrets) {
        return switch (cipher) {
            case BTHOME_V2 -> new BthomeCipher(secrets);
        };
    }

    /** Whether a frame is protected. */
    boolean isClosed(byte[] bytes, int from, int to);

    /** What a protected frame holds. */
    Opened open(byte[] bytes, int from, int to);

    /** The counter of a protected frame. */
    long counter(byte[] bytes, int from, int to);

    /** Whether frames can be protected: all that is secret is known. */
    boolean canClose();

    /** A plain frame as one that says that it is protected, or as one that says that it is not. */
    byte[] marked(byte[] plain, boolean closed);

    /** Protects a frame. */
    byte[] close(byte[] plain, long counter);

    /**
     * A frame that was opened.
     *
     * @param bytes the plain frame, empty where there is a complaint
     * @param complaint why it could not be opened, null where it could
     */
    record Opened(byte[] bytes, @Nullable String complaint) {}
}
