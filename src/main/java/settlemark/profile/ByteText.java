package settlemark.profile;

import java.util.Arrays;
import java.util.HexFormat;
import java.util.Locale;

/** A few bytes that a profile names, such as a start marker. Compares by content and cannot be changed. */
public final class ByteText {
    public static final ByteText EMPTY = new ByteText(new byte[0]);

    private final byte[] bytes;

    private ByteText(byte[] bytes) {
        this.bytes = bytes;
    }

    public static ByteText of(byte[] bytes) {
        return new ByteText(bytes.clone());
    }

    /**
     * From hexadecimal digits, pairs separated by blanks or not.
     *
     * @throws IllegalArgumentException where it is something else
     */
    public static ByteText ofHex(String hex) {
        String digits = hex.replaceAll("\\s+", "");
        return new ByteText(HexFormat.of().parseHex(digits));
    }

    public int length() {
        return bytes.length;
    }

    public boolean isEmpty() {
        return bytes.length == 0;
    }

    public byte at(int index) {
        return bytes[index];
    }

    /** A copy. */
    public byte[] toBytes() {
        return bytes.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ByteText text && Arrays.equals(text.bytes, bytes);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(bytes);
    }

    /** Upper-case hexadecimal pairs with blanks between. */
    @Override
    public String toString() {
        return HexFormat.ofDelimiter(" ").formatHex(bytes).toUpperCase(Locale.ROOT);
    }
}
