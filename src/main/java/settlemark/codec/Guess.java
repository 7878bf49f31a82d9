package settlemark.codec;

import java.util.Arrays;

/**
 * Guesses each number of a group from those before it. All arithmetic wraps, the same way in both directions. A group
 * begins with a start that is known: for the first two ways it is the first number itself, for the others the level about
 * which the numbers lie.
 */
enum Guess {
    /** As the last one. */
    LAST {
        @Override
        void restore(long[] numbers, int from, int to, long start, long slope) {
            numbers[from] = start;
            for (int i = from + 1; i < to; i++) {
                numbers[i] = numbers[i - 1] + Residual.unfold(numbers[i]);
            }
        }
    },
    /** As lying on the line through the last two. */
    LINE {
        @Override
        void restore(long[] numbers, int from, int to, long start, long slope) {
            long step = 0;
            numbers[from] = start;
            for (int i = from + 1; i < to; i++) {
                step += Residual.unfold(numbers[i]);
                numbers[i] = numbers[i - 1] + step;
            }
        }
    },
    /** As the start, about which all lie: the best where one in a hundred is far off. */
    LEVEL {
        @Override
        void restore(long[] numbers, int from, int to, long start, long slope) {
            for (int i = from; i < to; i++) {
                numbers[i] = start + Residual.unfold(numbers[i]);
            }
        }
    },
    /** As a running mean in which a new number weighs an eighth. */
    MEAN {
        @Override
        void restore(long[] numbers, int from, int to, long start, long slope) {
            long mean = start << SCALE;
            for (int i = from; i < to; i++) {
                numbers[i] = (mean + HALF >> SCALE) + Residual.unfold(numbers[i]);
                mean += (numbers[i] << SCALE) - mean >> MEAN_WEIGHT;
            }
        }
    },
    /** As a running level with a running step: of what the guess misses a quarter goes to the one, 1/32 to the other. */
    TREND {
        @Override
        void restore(long[] numbers, int from, int to, long start, long slope) {
            long step = slope << SCALE - SLOPE_SCALE;
            long level = start << SCALE;
            for (int i = from; i < to; i++) {
                numbers[i] = (level + HALF >> SCALE) + Residual.unfold(numbers[i]);
                long missed = (numbers[i] << SCALE) - level;
                step += missed >> STEP_WEIGHT;
                level += step + (missed >> LEVEL_WEIGHT);
            }
        }
    };

    /** Means, levels and steps are kept times 256. */
    private static final int SCALE = 8;

    /** A slope is stored times 16. */
    static final int SLOPE_SCALE = 4;

    private static final int HALF = 1 << SCALE - 1;
    private static final int MEAN_WEIGHT = 3;
    private static final int LEVEL_WEIGHT = 2;
    private static final int STEP_WEIGHT = 5;

    /** So many numbers of a group at most say about where its middle is. */
    private static final int LOOKED_AT = 9;

    /**
     * Puts numbers in the place of what the guess left of them.
     *
     * @param start of the group; where it is the first number, nothing was left of that
     * @param slope with which the running level begins, in sixteenths a number
     */
    abstract void restore(long[] numbers, int from, int to, long start, long slope);

    /** Whether a group's start is its first number. */
    boolean startsWithFirst() {
        return this == LAST || this == LINE;
    }

    /** What the first two leave, folded, by ordinal; the first number is the start. */
    static void restsOfSteps(long[] numbers, int from, int to, long[][] rests) {
        long last = numbers[from];
        long step = 0;
        for (int i = from + 1; i < to; i++) {
            long number = numbers[i];
            int at = i - from - 1;
            rests[0][at] = Residual.fold(number - last);
            rests[1][at] = Residual.fold(number - last - step);
            step = number - last;
            last = number;
        }
    }

    /** What a level leaves. */
    static void restsOfLevel(long[] numbers, int from, int to, long level, long[][] rests) {
        for (int i = from; i < to; i++) {
            rests[LEVEL.ordinal()][i - from] = Residual.fold(numbers[i] - level);
        }
    }

    /**
     * About the middle of the numbers, to find out whether the middle itself is worth its time: of nine of them that
     * which J. W. Tukey called the ninther (The ninther, a technique for low-effort robust location in large samples,
     * 1978).
     */
    static long aboutMiddle(long[] numbers, int from, int to) {
        int apart = (to - from) / LOOKED_AT;
        return middle(
                middleOfThree(numbers, from, apart),
                middleOfThree(numbers, from + apart, apart),
                middleOfThree(numbers, from + 2 * apart, apart));
    }

    /** Of three that lie three times as far apart. */
    private static long middleOfThree(long[] numbers, int from, int apart) {
        return middle(numbers[from], numbers[from + 3 * apart], numbers[from + 6 * apart]);
    }

    private static long middle(long a, long b, long c) {
        return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
    }

    /** The number that half of the others are not above. */
    static long middle(long[] numbers, int from, int to) {
        long[] sorted = Arrays.copyOfRange(numbers, from, to);
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    /** What the last two leave. */
    static void restsOfLevels(long[] numbers, int from, int to, long start, long slope, long[][] rests) {
        long mean = start << SCALE;
        long step = slope << SCALE - SLOPE_SCALE;
        long level = start << SCALE;
        for (int i = from; i < to; i++) {
            long scaled = numbers[i] << SCALE;
            rests[MEAN.ordinal()][i - from] = Residual.fold(numbers[i] - (mean + HALF >> SCALE));
            mean += scaled - mean >> MEAN_WEIGHT;
            rests[TREND.ordinal()][i - from] = Residual.fold(numbers[i] - (level + HALF >> SCALE));
            long missed = scaled - level;
            step += missed >> STEP_WEIGHT;
            level += step + (missed >> LEVEL_WEIGHT);
        }
    }

    /** The running level and step over all groups, for the start and the slope of each. */
    static final class Runner {
        private long level;
        private long step;

        Runner(long first) {
            level = first << SCALE;
        }

        long start() {
            return level + HALF >> SCALE;
        }

        long slope() {
            return step + (1 << SCALE - SLOPE_SCALE - 1) >> SCALE - SLOPE_SCALE;
        }

        void run(long[] numbers, int from, int to) {
            for (int i = from; i < to; i++) {
                long missed = (numbers[i] << SCALE) - level;
                step += missed >> STEP_WEIGHT;
                level += step + (missed >> LEVEL_WEIGHT);
            }
        }
    }
}
