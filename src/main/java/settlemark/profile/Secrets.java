package settlemark.profile;

import java.util.Objects;

/**
 * What a protected device's frames need beside the profile. Never stored and never printed.
 *
 * @param address of the device, 6 bytes as it is written, high byte first; empty where it is not known
 * @param key of the cipher, 16 bytes; empty where it is not known
 */
public record Secrets(ByteText address, ByteText key) {
    public static final Secrets NONE = new Secrets(ByteText.EMPTY, ByteText.EMPTY);

    public Secrets {
        Objects.requireNonNull(address);
        Objects.requireNonNull(key);
        if (!address.isEmpty() && address.length() != 6) {
            throw new IllegalArgumentException("a device address has 6 bytes, got " + address.length());
        }
        if (!key.isEmpty() && key.length() != 16) {
            throw new IllegalArgumentException("a key has 16 bytes, got " + key.length());
        }
    }

    /** Without the key. */
    @Override
    public String toString() {
        return "Secrets[address " + (address.isEmpty() ? "unknown" : "known") + ", key "
                + (key.isEmpty() ? "unknown" : "known") + "]";
    }
}
