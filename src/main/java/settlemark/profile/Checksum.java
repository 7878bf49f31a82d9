package settlemark.profile;

import java.util.Objects;

/**
 * A checksum at the end of a frame (before the delimiter of a line, and before bytes that follow it).
 *
 * @param algorithm how it is computed
 * @param order which of its bytes comes first
 * @param coversFrom offset of the first byte that it covers; it covers up to itself or its lead-in
 * @param hex written as hexadecimal digits rather than as bytes
 * @param followedBy bytes of the frame after the checksum, 0 or more; it does not cover them
 * @param leadIn bytes between what is covered and the checksum, such as {@code *}; may be empty
 * @param line where the profile describes it
 */
public record Checksum(
        Algorithm algorithm, Wire.Order order, int coversFrom, int followedBy, boolean hex, ByteText leadIn, int line) {
    public Checksum {
        Objects.requireNonNull(algorithm);
        Objects.requireNonNull(order);
        Objects.requireNonNull(leadIn);
        if (coversFrom < 0 || followedBy < 0) {
            throw new IllegalArgumentException("a checksum covers from 0 or later, got " + coversFrom);
        }
    }

    /** Bytes of the checksum itself, as written. */
    public int bytes() {
        int bytes = (algorithm.width() + 7) / 8;
        return hex ? 2 * bytes : bytes;
    }

    /** Bytes of the checksum with its lead-in and what follows it. */
    public int bytesAtEnd() {
        return bytes() + leadIn.length() + followedBy;
    }

    /** How a checksum is computed. */
    public sealed interface Algorithm {
        /** Width in bits. */
        int width();
    }

    /**
     * A cyclic redundancy check by the parameters that the public catalogues of CRC algorithms list.
     *
     * @param width in bits, 3 to 64
     * @param poly polynomial without its highest term, not reflected
     * @param init start value, not reflected
     * @param refin whether each byte goes in lowest bit first
     * @param refout whether the result is reflected
     * @param xorout what the result is combined with
     */
    public record Crc(int width, long poly, long init, boolean refin, boolean refout, long xorout)
            implements Algorithm {
        public Crc {
            if (width < 3 || width > 64) {
                throw new IllegalArgumentException("a CRC has 3 to 64 bits, got " + width);
            }
        }
    }

    /**
     * The sum of all bytes, its low bits.
     *
     * @param width in bits, 8 or 16
     * @param negated the two's complement of the sum, so that all together add up to nothing; with 8 bits this is the
     *     LRC of Modbus ASCII
     */
    public record Sum(int width, boolean negated) implements Algorithm {
        public Sum {
            if (width != 8 && width != 16) {
                throw new IllegalArgumentException("a sum has 8 or 16 bits, got " + width);
            }
        }
    }

    /** All bytes combined by exclusive or, 8 bits. */
    public record Xor() implements Algorithm {
        @Override
        public int width() {
            return 8;
        }
    }
}
