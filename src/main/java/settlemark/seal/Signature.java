package settlemark.seal;

import java.util.Arrays;
import java.util.Base64;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Who signed what stands before it, by the public half of their key, and the signature. Two are equal when their bytes are.
 *
 * @param publicKey Ed25519 key in X.509 form (RFC 8410)
 * @param bytes Ed25519 (RFC 8032), 64 bytes
 */
public record Signature(byte[] publicKey, byte[] bytes) {
    public Signature {
        publicKey = publicKey.clone();
        bytes = bytes.clone();
    }

    static Signature of(byte[] message, SealKey key) {
        return new Signature(key.publicKey(), key.sign(message));
    }

    /** Whether it belongs to this message and to its key. */
    boolean holds(byte[] message) {
        return SealKey.holds(publicKey, message, bytes);
    }

    /** The key as people compare it. */
    public String fingerprint() {
        return SealKey.fingerprint(publicKey);
    }

    void into(ObjectNode node) {
        node.put("key", Base64.getEncoder().encodeToString(publicKey));
        node.put("signature", Base64.getEncoder().encodeToString(bytes));
    }

    /** @throws IllegalArgumentException where a text is not in base 64 */
    static Signature in(JsonNode node) {
        return new Signature(
                Base64.getDecoder().decode(node.required("key").stringValue()),
                Base64.getDecoder().decode(node.required("signature").stringValue()));
    }

    @Override
    public byte[] publicKey() {
        return publicKey.clone();
    }

    @Override
    public byte[] bytes() {
        return bytes.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Signature signature
                && Arrays.equals(publicKey, signature.publicKey)
                && Arrays.equals(bytes, signature.bytes);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(publicKey) + Arrays.hashCode(bytes);
    }

    @Override
    public String toString() {
        return "signature by key " + fingerprint();
    }
}
