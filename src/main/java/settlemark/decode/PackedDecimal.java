package settlemark.decode;

/** Packed decimal digits, four bits each, the highest digit in the highest bits. */
final class PackedDecimal {
    private PackedDecimal() {}

    /** The number, NaN where a digit is not 0 to 9. */
    static double value(long bits) {
        // Digits that are 10 or more carry when 6 is added to each.
        long low = bits & 0x0F0F0F0F0F0F0F0FL;
        long high = bits >>> 4 & 0x0F0F0F0F0F0F0F0FL;
        long carries = low + 0x0606060606060606L | high + 0x0606060606060606L;
        if ((carries & 0x1010101010101010L) != 0) {
            return Double.NaN;
        }
        long value = 0;
        for (int shift = 60; shift >= 0; shift -= 4) {
            value = 10 * value + (bits >>> shift & 0xF);
        }
        return value;
    }

    /** The digits of a number from 0 to 16 nines. */
    static long bits(long number) {
        long bits = 0;
        long left = number;
        for (int shift = 0; left != 0; shift += 4) {
            bits |= left % 10 << shift;
            left /= 10;
        }
        return bits;
    }

    /** Largest number of so many bits; a last digit that has fewer than four is counted by its bits. */
    static long most(int width) {
        long most = 0;
        for (int left = width; left > 0; left -= 4) {
            most = left < 4 ? ((1L << left) - 1) * power(width / 4) + most : most + 9 * power((width - left) / 4);
        }
        return most;
    }

    private static long power(int exponent) {
        long power = 1;
        for (int i = 0; i < exponent; i++) {
            power *= 10;
        }
        return power;
    }
}
