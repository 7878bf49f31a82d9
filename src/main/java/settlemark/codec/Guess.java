package settlemark.codec;

/**
 * Guesses each number of a group from those before it: as the last one, as lying on the line through the last two, or as
 * a running mean in which a new number weighs an eighth. The first number is known. All arithmetic wraps, the same way in
 * both directions.
 */
enum Guess {
    LAST {
        @Override
        void restore(long[] numbers, int from, int to) {
            for (int i = from + 1; i < to; i++) {
                numbers[i] = numbers[i - 1] + Residual.unfold(numbers[i]);
            }
        }
    },
    LINE {
        @Override
        void restore(long[] numbers, int from, int to) {
            long step = 0;
            for (int i = from + 1; i < to; i++) {
                step += Residual.unfold(numbers[i]);
                numbers[i] = numbers[i - 1] + step;
            }
        }
    },
    MEAN {
        @Override
        void restore(long[] numbers, int from, int to) {
            long mean = numbers[from] << SCALE;
            for (int i = from + 1; i < to; i++) {
                numbers[i] = (mean + HALF >> SCALE) + Residual.unfold(numbers[i]);
                mean += (numbers[i] << SCALE) - mean >> WEIGHT;
            }
        }
    };

    /** The mean is kept times sixteen. */
    private static final int SCALE = 4;

    private static final int HALF = 1 << SCALE - 1;
    private static final int WEIGHT = 3;

    /** Puts numbers in the place of what the guess left of them; the first is a number already. */
    abstract void restore(long[] numbers, int from, int to);

    /** What each guess leaves of all but the first number, folded; by the guess's ordinal. */
    static void rests(long[] numbers, int from, int to, long[][] rests) {
        long last = numbers[from];
        long step = 0;
        long mean = last << SCALE;
        for (int i = from + 1; i < to; i++) {
            long number = numbers[i];
            int at = i - from - 1;
            rests[0][at] = Residual.fold(number - last);
            rests[1][at] = Residual.fold(number - last - step);
            rests[2][at] = Residual.fold(number - (mean + HALF >> SCALE));
            step = number - last;
            last = number;
            mean += (number << SCALE) - mean >> WEIGHT;
        }
    }
}
