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
        void leave(long[] numbers, int from, int to, long start, long slope, long[] rests) {
            for (int i = from + 1; i < to; i++) {
                rests[i - from - 1] = Residual.fold(numbers[i] - numbers[i - 1]);
            }
        }

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
        void leave(long[] numbers, int from, int to, long start, long slope, long[] rests) {
            long step = 0;
            for (int i = from + 1; i < to; i++) {
                long now = numbers[i] - numbers[i - 1];
                rests[i - from - 1] = Residual.fold(now - step);
                step = now;
            }
        }

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
        void leave(long[] numbers, int from, int to, long start, long slope, long[] rests) {
            for (int i = from; i < to; i++) {
                rests[i - from] = Residual.fold(numbers[i] - start);
            }
        }

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
        void leave(long[] numbers, int from, int to, long start, long slope, long[] rests) {
            long mean = start << SCALE;
            for (int i = from; i < to; i++) {
                rests[i - from] = Residual.fold(numbers[i] - (mean + HALF >> SCALE));
                mean += (numbers[i] << SCALE) - mean >> MEAN_WEIGHT;
            }
        }

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
        void leave(long[] numbers, int from, int to, long start, long slope, long[] rests) {
            long step = slope << SCALE - SLOPE_SCALE;
            long level = start << SCALE;
            for (int i = from; i < to; i++) {
                rests[i - from] = Residual.fold(numbers[i] - (level + HALF >> SCALE));
                long missed = (numbers[i] << SCALE) - level;
                step += missed >> STEP_WEIGHT;
                level += step + (missed >> LEVEL_WEIGHT);
            }
        }

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

    private static final int GUESSES = 5;

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
     * Puts what the guess leaves of numbers, folded, into another place; of a first number that is the start nothing.
     *
     * @param start of the group
     * @param slope with which the running level begins, in sixteenths a number
     */
    abstract void leave(long[] numbers, int from, int to, long start, long slope, long[] rests);

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

    /** What each way leaves of a group of numbers, in bits: how many there would be if each rest had just its own. */
    static final class Bits {
        /** By the way's ordinal, of all but a first number that is the start. */
        final int[] of = new int[GUESSES];

        private long level;
        private long step;

        /**
         * Looks at a group once for all ways.
         *
         * @param start with which levels begin
         * @param slope with which the running level begins
         * @param middle about which all may lie
         */
        void count(long[] numbers, int from, int to, long start, long slope, long middle) {
            long mean = start << SCALE;
            level = start << SCALE;
            step = slope << SCALE - SLOPE_SCALE;
            int levels = 0;
            int means = 0;
            int trends = 0;
            for (int i = from; i < to; i++) {
                long number = numbers[i];
                long scaled = number << SCALE;
                levels += Residual.width(Residual.fold(number - middle));
                means += Residual.width(Residual.fold(number - (mean + HALF >> SCALE)));
                mean += scaled - mean >> MEAN_WEIGHT;
                trends += Residual.width(Residual.fold(number - (level + HALF >> SCALE)));
                long missed = scaled - level;
                step += missed >> STEP_WEIGHT;
                level += step + (missed >> LEVEL_WEIGHT);
            }
            of[LEVEL.ordinal()] = levels;
            of[MEAN.ordinal()] = means;
            of[TREND.ordinal()] = trends;
            countSteps(numbers, from, to);
        }

        private void countSteps(long[] numbers, int from, int to) {
            int lasts = 0;
            int lines = 0;
            long last = numbers[from];
            long before = 0;
            for (int i = from + 1; i < to; i++) {
                long now = numbers[i] - last;
                last = numbers[i];
                lasts += Residual.width(Residual.fold(now));
                lines += Residual.width(Residual.fold(now - before));
                before = now;
            }
            of[LAST.ordinal()] = lasts;
            of[LINE.ordinal()] = lines;
        }

        /** The running level behind the group, with which the next one's begin. */
        long start() {
            return level + HALF >> SCALE;
        }

        /** The running step, as a slope. */
        long slope() {
            return step + (1 << SCALE - SLOPE_SCALE - 1) >> SCALE - SLOPE_SCALE;
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

    /** The number that half of the others are not above; found as in C. A. R. Hoare's algorithm 65, Find (1961). */
    static long middle(long[] numbers, int from, int to) {
        long[] some = Arrays.copyOfRange(numbers, from, to);
        int wanted = some.length / 2;
        int low = 0;
        int high = some.length - 1;
        while (low < high) {
            long pivot = some[wanted];
            int i = low;
            int j = high;
            while (i <= j) {
                while (some[i] < pivot) {
                    i++;
                }
                while (some[j] > pivot) {
                    j--;
                }
                if (i <= j) {
                    long swapped = some[i];
                    some[i++] = some[j];
                    some[j--] = swapped;
                }
            }
            low = j < wanted ? i : low;
            high = wanted < i ? j : high;
        }
        return some[wanted];
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
}
