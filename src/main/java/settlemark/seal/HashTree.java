package settlemark.seal;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.List;

/**
 * The Merkle tree hash of RFC 6962, section 2.1, over SHA-256: a leaf is hashed after a byte 0, a node after a byte 1, so
 * that no leaf can pass for a node.
 */
final class HashTree {
    private HashTree() {}

    /** Root over the leaves in their order; of no leaves, the digest of nothing. */
    static byte[] root(List<byte[]> leaves) {
        return switch (leaves.size()) {
            case 0 -> sha256().digest();
            case 1 -> hash(0, leaves.get(0), new byte[0]);
            default -> {
                // The largest power of two below the count.
                int left = Integer.highestOneBit(leaves.size() - 1);
                yield hash(1, root(leaves.subList(0, left)), root(leaves.subList(left, leaves.size())));
            }
        };
    }

    private static byte[] hash(int kind, byte[] first, byte[] second) {
        MessageDigest digest = sha256();
        digest.update((byte) kind);
        digest.update(first);
        return digest.digest(second);
    }

    static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
