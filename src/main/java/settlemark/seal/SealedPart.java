package settlemark.seal;

import java.util.Arrays;
import java.util.HexFormat;

/**
 * One part of what is sealed.
 *
 * @param name what it is, unique in a seal, such as {@code bytes of gauge, minute 3}
 * @param digest SHA-256 of its values in canonical form
 */
public record SealedPart(String name, byte[] digest) {
    /** Bytes of a digest. */
    private static final int LENGTH = 32;

    public SealedPart {
        if (name.isBlank() || digest.length != LENGTH) {
            throw new IllegalArgumentException("a sealed part has a name and a digest of 32 bytes, got \"" + name
                    + "\" and " + digest.length + " bytes");
        }
        if (name.chars().anyMatch(Character::isISOControl)) {
            throw new IllegalArgumentException("the name of a sealed part has control characters");
        }
        digest = digest.clone();
    }

    @Override
    public byte[] digest() {
        return digest.clone();
    }

    /** Digest in hex, small letters. */
    public String hex() {
        return HexFormat.of().formatHex(digest);
    }

    /** What goes into the tree: the name belongs to it, so that two parts cannot change places. */
    byte[] leaf() {
        return new Canon().add(name).add(digest).digest();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SealedPart part && name.equals(part.name) && Arrays.equals(digest, part.digest);
    }

    @Override
    public int hashCode() {
        return 31 * name.hashCode() + Arrays.hashCode(digest);
    }

    @Override
    public String toString() {
        return name + " " + hex();
    }
}
