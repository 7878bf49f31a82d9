package settlemark.codec;

import java.util.Arrays;

/**
 * What guesses left of a group of numbers, either packed to the width of the largest or in Rice's code (R. F. Rice, "Some
 * practical universal noiseless coding techniques", JPL Publication 79-22), whichever is shorter: guess (3 bits), slope of
 * a trend, kind (2), width (6, unless nothing is left), rests.
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

    /**
     * Writes a group but for its start, and returns that.
     *
     * @param level which its start is to be unless it is the first number
     * @param slope of the level
     */
    static long write(BitWriter out, long[] numbers, int from, int to, long level, long slope, long[][] room) {
        int count = to - from;
        Guess.restsOfSteps(numbers, from, to, room);
        Guess.restsOfLevels(numbers, from, to, level, slope, room);
        Guess.restsOfLevel(numbers, from, to, Guess.aboutMiddle(numbers, from, to), room);
        Guess best = best(count, Residual.width(Residual.fold(numbers[from] - level)), room);
        long middle = level;
        if (best == Guess.LEVEL) {
            middle = Guess.middle(numbers, from, to);
            Guess.restsOfLevel(numbers, from, to, middle, room);
        }
        out.bits(best.ordinal(), 3);
        if (best == Guess.TREND) {
            out.signed(slope);
        }
        writeRests(out, room[best.ordinal()], best.startsWithFirst() ? count - 1 : count);
        return best.startsWithFirst() ? numbers[from] : middle;
    }

    /** The same in a hurry: each number is guessed as the last one. */
    static long writeQuickly(BitWriter out, long[] numbers, int from, int to, long[] rests) {
        for (int i = from + 1; i < to; i++) {
            rests[i - from - 1] = Residual.fold(numbers[i] - numbers[i - 1]);
        }
        out.bits(Guess.LAST.ordinal(), 3);
        writeRests(out, rests, to - from - 1);
        return numbers[from];
    }

    /** @param off bits by which the first number is off the level: about so many more it takes as a start */
    private static Guess best(int count, int off, long[][] room) {
        Guess best = Guess.LAST;
        int least = Integer.MAX_VALUE;
        for (Guess guess : GUESSES) {
            int bits = guess.startsWithFirst()
                    ? widths(room[guess.ordinal()], count - 1) + off
                    : widths(room[guess.ordinal()], count) + (guess == Guess.TREND ? 8 : 0);
            if (bits < least) {
                least = bits;
                best = guess;
            }
        }
        return best;
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
        int rice = Math.min(WIDEST_RICE, widths(rests, count) / count);
        long bits = riceBits(rests, count, rice);
        for (int narrower = rice - 1; narrower >= 0; narrower--) {
            long fewer = riceBits(rests, count, narrower);
            if (fewer >= bits) {
                break;
            }
            bits = fewer;
            rice = narrower;
        }
        if (bits < (long) count * width) {
            out.bits(RICE, 2);
            out.bits(rice, 6);
            out.rice(rests, count, rice, MOST_ONES);
        } else {
            out.bits(PACKED, 2);
            out.bits(width - 1L, 6);
            out.packed(rests, count, width);
        }
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

    /** Restores a group whose start is known. */
    static void read(BitReader in, long[] numbers, int from, int to, long start) {
        int way = (int) in.bits(3);
        if (way >= GUESSES.length) {
            throw new IllegalArgumentException("a group of numbers guessed in an unknown way");
        }
        Guess guess = GUESSES[way];
        long slope = guess == Guess.TREND ? in.signed() : 0;
        int first = guess.startsWithFirst() ? from + 1 : from;
        int kind = (int) in.bits(2);
        switch (kind) {
            case NOTHING_LEFT -> Arrays.fill(numbers, first, to, 0);
            case PACKED -> in.packed(numbers, first, to - first, (int) in.bits(6) + 1);
            case RICE -> readRice(in, numbers, first, to - first, (int) in.bits(6));
            default -> throw new IllegalArgumentException("a group of numbers of an unknown kind");
        }
        guess.restore(numbers, from, to, start, slope);
    }

    private static void readRice(BitReader in, long[] numbers, int from, int count, int width) {
        if (width > WIDEST_RICE) {
            throw new IllegalArgumentException("a group of numbers has a width of " + width);
        }
        in.rice(numbers, from, count, width, MOST_ONES);
    }
}
