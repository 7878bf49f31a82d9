package settlemark.profile;

import java.util.Objects;

/**
 * A number as it travels in bytes.
 *
 * @param kind what the bits mean
 * @param bytes 1 to 8; 2, 4 or 8 for IEEE 754, 2 or 4 for IEEE 11073 numbers
 * @param order which byte comes first; the swapped ones need whole words, 4, 6 or 8 bytes
 */
public record Wire(Kind kind, int bytes, Order order) {
    /** What the bits mean. */
    public enum Kind {
        /** Two's complement. */
        SIGNED,
        UNSIGNED,
        /** Packed decimal digits, four bits each; any other digit than 0 to 9 is a fault of the device. */
        BCD,
        /** IEEE 754 half, single or double precision. */
        IEEE_FLOAT,
        /** ISO/IEEE 11073-20601 SFLOAT (2 bytes) or FLOAT (4 bytes): mantissa times a power of ten. */
        MEDICAL_FLOAT
    }

    /** Which byte comes first. The letters name the bytes from high to low. */
    public enum Order {
        /** Low byte first: DCBA. */
        LITTLE,
        /** High byte first: ABCD. */
        BIG,
        /** Words of 16 bits, low word first, each with its high byte first: CDAB. */
        BIG_WORDS_SWAPPED,
        /** Words of 16 bits, high word first, each with its low byte first: BADC. */
        LITTLE_WORDS_SWAPPED
    }

    public Wire {
        Objects.requireNonNull(kind);
        Objects.requireNonNull(order);
        if (bytes < 1 || bytes > 8) {
            throw new IllegalArgumentException("a number has 1 to 8 bytes, got " + bytes);
        }
        if (kind == Kind.IEEE_FLOAT && bytes != 2 && bytes != 4 && bytes != 8) {
            throw new IllegalArgumentException("an IEEE 754 number has 2, 4 or 8 bytes, got " + bytes);
        }
        if (kind == Kind.MEDICAL_FLOAT && bytes != 2 && bytes != 4) {
            throw new IllegalArgumentException("an IEEE 11073 number has 2 or 4 bytes, got " + bytes);
        }
        if (order.ordinal() >= Order.BIG_WORDS_SWAPPED.ordinal() && bytes % 2 != 0) {
            throw new IllegalArgumentException("words can be swapped in whole words only, got " + bytes + " bytes");
        }
    }

    public boolean isInteger() {
        return kind == Kind.SIGNED || kind == Kind.UNSIGNED || kind == Kind.BCD;
    }
}
