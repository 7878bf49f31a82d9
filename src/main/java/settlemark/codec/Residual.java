package settlemark.codec;

/** What is left of a number after a guess, folded so that small ones of either sign are small: 0, -1, 1, -2, 2 ... */
final class Residual {
    private Residual() {}

    static long fold(long value) {
        return value << 1 ^ value >> 63;
    }

    static long unfold(long folded) {
        return folded >>> 1 ^ -(folded & 1);
    }

    /** Bits that a folded residual has. */
    static int width(long folded) {
        return Long.SIZE - Long.numberOfLeadingZeros(folded);
    }
}
