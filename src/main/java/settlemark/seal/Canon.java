package settlemark.seal;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Collection;
import java.util.function.Consumer;

/**
 * Values as bytes that say how long they are, fed into a digest: no two different sequences of values give the same
 * bytes. Numbers are big-endian, doubles by their bits, texts in UTF-8.
 */
final class Canon {
    /** A digest goes faster over many bytes at a time than over eight. */
    private static final int ROOM = 1024;

    private final MessageDigest digest = HashTree.sha256();
    private final byte[] waiting = new byte[ROOM];
    private int count;

    Canon add(long value) {
        if (count > ROOM - Long.BYTES) {
            pass();
        }
        for (int shift = Long.SIZE - Byte.SIZE; shift >= 0; shift -= Byte.SIZE) {
            waiting[count++] = (byte) (value >>> shift);
        }
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
        if (bytes.length > ROOM - count) {
            pass();
        }
        if (bytes.length > ROOM) {
            digest.update(bytes);
        } else {
            System.arraycopy(bytes, 0, waiting, count, bytes.length);
            count += bytes.length;
        }
        return this;
    }

    <T> Canon each(Collection<T> items, Consumer<T> item) {
        add((long) items.size());
        items.forEach(item);
        return this;
    }

    /** The digest of all that was added; afterwards empty again. */
    byte[] digest() {
        pass();
        return digest.digest();
    }

    private void pass() {
        digest.update(waiting, 0, count);
        count = 0;
    }
}
