package settlemark.seal;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Collection;
import java.util.function.Consumer;

/**
 * Values as bytes that say how long they are, fed into a digest: no two different sequences of values give the same
 * bytes. Numbers are big-endian, doubles by their bits, texts in UTF-8.
 */
final class Canon {
    private final MessageDigest digest = HashTree.sha256();
    private final byte[] eight = new byte[Long.BYTES];
    private final ByteBuffer number = ByteBuffer.wrap(eight);

    Canon add(long value) {
        number.putLong(0, value);
        digest.update(eight);
        return this;
    }

    Canon add(double value) {
        return add(Double.doubleToRawLongBits(value));
    }

    Canon add(boolean value) {
        return add(value ? 1L : 0L);
    }

    Canon add(String text) {
        return add(text.getBytes(StandardCharsets.UTF_8));
    }

    Canon add(byte[] bytes) {
        add((long) bytes.length);
        digest.update(bytes);
        return this;
    }

    <T> Canon each(Collection<T> items, Consumer<T> item) {
        add((long) items.size());
        items.forEach(item);
        return this;
    }

    /** The digest of all that was added; afterwards empty again. */
    byte[] digest() {
        return digest.digest();
    }
}
