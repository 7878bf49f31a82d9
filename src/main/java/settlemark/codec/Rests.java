package settlemark.codec;

import java.util.Arrays;

/**
 * What guesses left of a group of numbers, either packed to the width of the largest or in Rice's code (R. F. Rice, "Some
 * practical universal noiseless coding techniques", JPL Publication 79-22), whichever is shorter: guess (2 bits), kind
 * (2), width (6, unless nothing is left), rests.
 */
final class Rests {
    private static final int NOTHING_LEFT = 0;
    private static final int PACKED = 1;
    private static final int RICE = 2;

    /** A rest that would need so many ones is written out instead. */
    private static final int MOST_ONES = 24;

    private static final int WIDEST_RICE = 31;

    private static final Guess[] GUESSES = Guess.values();

    private Rests() {}

    /** Writes the group but for its first number. */
    static void write(BitWriter out, long[] numbers, int from, int to, long[][] room) {
        int count = to - from - 1;
        if (count == 0) {
            return;
        }
        Guess.rests(numbers, from, to, room);
        int best = 0;
        for (int i = 1; i < GUESSES.length; i++) {
            best = widths(room[i], count) < widths(room[best], count) ? i : best;
        }
        out.bits(best, 2);
        writeRests(out, room[best], count);
    }

    private static int widths(long[] rests, int count) {
        int bits = 0;
        for (int i = 0; i < count; i++) {
            bits += Residual.width(rests[i]);
        }
        return bits;
    }

    private static void writeRests(BitWriter out, long[] rests, int count) {
        long all = 0;
        for (int i = 0; i < count; i++) {
            all |= rests[i];
        }
        if (all == 0) {
            out.bits(NOTHING_LEFT, 2);
            return;
        }
        int width = Residual.width(all);
        int rice = bestRice(rests, count);
        if (riceBits(rests, count, rice) < (long) count * width) {
            out.bits(RICE, 2);
            out.bits(rice, 6);
            for (int i = 0; i < count; i++) {
                writeRice(out, rests[i], rice);
            }
        } else {
            out.bits(PACKED, 2);
            out.bits(width - 1L, 6);
            for (int i = 0; i < count; i++) {
                out.bits(rests[i], width);
            }
        }
    }

    private static int bestRice(long[] rests, int count) {
        int best = Math.min(WIDEST_RICE, widths(rests, count) / count);
        long least = riceBits(rests, count, best);
        for (int width = best - 1; width >= 0; width--) {
            long bits = riceBits(rests, count, width);
            if (bits >= least) {
                break;
            }
            least = bits;
            best = width;
        }
        return best;
    }

    private static long riceBits(long[] rests, int count, int width) {
        long bits = 0;
        for (int i = 0; i < count; i++) {
            long ones = rests[i] >>> width;
            bits += few(ones) ? ones + 1 + width : MOST_ONES + Long.SIZE;
        }
        return bits;
    }

    /** Whether they are written as ones; the number has no sign. */
    private static boolean few(long ones) {
        return ones >= 0 && ones < MOST_ONES;
    }

    private static void writeRice(BitWriter out, long rest, int width) {
        long ones = rest >>> width;
        if (few(ones)) {
            out.bits((1L << ones) - 1 | (rest & (1L << width) - 1) << ones + 1, (int) ones + 1 + width);
        } else {
            out.bits((1L << MOST_ONES) - 1, MOST_ONES);
            out.bits(rest, Long.SIZE);
        }
    }

    /** Restores a group whose first number is in its place already. */
    static void read(BitReader in, long[] numbers, int from, int to) {
        int count = to - from - 1;
        if (count == 0) {
            return;
        }
        int guess = (int) in.bits(2);
        int kind = (int) in.bits(2);
        if (guess >= GUESSES.length) {
            throw new IllegalArgumentException("a group of numbers guessed in an unknown way");
        }
        switch (kind) {
            case NOTHING_LEFT -> Arrays.fill(numbers, from + 1, to, 0);
            case PACKED -> in.packed(numbers, from + 1, count, (int) in.bits(6) + 1);
            case RICE -> readRice(in, numbers, from + 1, count, (int) in.bits(6));
            default -> throw new IllegalArgumentException("a group of numbers of an unknown kind");
        }
        GUESSES[guess].restore(numbers, from, to);
    }

    private static void readRice(BitReader in, long[] numbers, int from, int count, int width) {
        if (width > WIDEST_RICE) {
            throw new IllegalArgumentException("a group of numbers has a width of " + width);
        }
        in.rice(numbers, from, count, width, MOST_ONES);
    }
}
