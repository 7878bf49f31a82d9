package settlemark.profile;

import java.util.Objects;

/**
 * A number as it travels in bytes.
 *
 * @param kind what the bits mean
 * @param bytes 1 to 8; 4 or 8 for IEEE 754 numbers
 * @param order which byte comes first
 */
public record Wire(Kind kind, int bytes, Order order) {
    /** What the bits mean. */
    public enum Kind {
        /** Two's complement. */
        SIGNED,
        UNSIGNED,
        /** IEEE 754 single or double precision. */
        IEEE_FLOAT
    }

    /** Which byte comes first. */
    public enum Order {
        /** Low byte first. */
        LITTLE,
        /** High byte first. */
        BIG
    }

    public Wire {
        Objects.requireNonNull(kind);
        Objects.requireNonNull(order);
        if (bytes < 1 || bytes > 8) {
            throw new IllegalArgumentException("a number has 1 to 8 bytes, got " + bytes);
        }
        if (kind == Kind.IEEE_FLOAT && bytes != 4 && bytes != 8) {
            throw new IllegalArgumentException("an IEEE 754 number has 4 or 8 bytes, got " + bytes);
        }
    }
}
