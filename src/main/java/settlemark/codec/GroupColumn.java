package settlemark.codec;

/**
 * One channel's statistics as a column. Where all of them lie on one {@link Grid}, the smallest is stored as a whole
 * number and the others as what they are above it, and the mean as the sum of what the samples are above it; else each
 * statistic is a {@link ValueColumn}.
 *
 * <p>On a grid or not (1 bit), counts, and of the groups with any measurement: grid (6 bits), smallest, largest, first,
 * last, sum; or the five columns.
 */
final class GroupColumn {
    /** Below this a sum of whole numbers is still known exactly when it has been made out of a mean. */
    private static final double LARGEST_SUM = 1L << 42;

    /** So far a sum may be from a whole number, for its own size, by the rounding of the sums that the mean was made of. */
    private static final double ROUNDING = 0x1p-44;

    private GroupColumn() {}

    /** @param groups at least one */
    static void write(BitWriter out, Groups groups) {
        int filled = filled(groups.counts());
        double[][] statistics = {
            filled(groups, groups.mins(), filled),
            filled(groups, groups.maxs(), filled),
            filled(groups, groups.firsts(), filled),
            filled(groups, groups.lasts(), filled),
            filled(groups, groups.means(), filled)
        };
        int index = grid(groups, statistics);
        out.bits(index < 0 ? 0 : 1, 1);
        IntegerColumn.write(out, groups.counts());
        if (filled == 0) {
            return;
        }
        if (index < 0) {
            for (double[] statistic : statistics) {
                ValueColumn.write(out, statistic, Effort.THOROUGH);
            }
        } else {
            out.bits(index, 6);
            writeNumbers(out, Grid.ALL.get(index), groups, statistics);
        }
    }

    private static int filled(long[] counts) {
        int filled = 0;
        for (long count : counts) {
            filled += count > 0 ? 1 : 0;
        }
        return filled;
    }

    private static double[] filled(Groups groups, double[] statistic, int filled) {
        double[] some = new double[filled];
        int at = 0;
        for (int i = 0; i < statistic.length; i++) {
            if (groups.counts()[i] > 0) {
                some[at++] = statistic[i];
            }
        }
        return some;
    }

    /** The coarsest grid of multiples on which all of them lie, the sum too; -1 where there is none. */
    private static int grid(Groups groups, double[][] statistics) {
        for (int index = 0; Grid.ALL.get(index).kind() == Grid.Kind.MULTIPLES; index++) {
            if (holds(Grid.ALL.get(index), groups.counts(), statistics)) {
                return index;
            }
        }
        return -1;
    }

    private static boolean holds(Grid grid, long[] counts, double[][] statistics) {
        int at = 0;
        for (long count : counts) {
            if (count == 0) {
                continue;
            }
            for (int s = 0; s < 4; s++) {
                double value = statistics[s][at];
                if (!grid.holds(value) || Math.abs(value * grid.divisor() * count) > LARGEST_SUM) {
                    return false;
                }
            }
            double sum = statistics[4][at] * count * grid.divisor();
            if (Math.abs(sum - Math.rint(sum)) > Math.abs(sum) * ROUNDING) {
                return false;
            }
            at++;
        }
        return true;
    }

    private static void writeNumbers(BitWriter out, Grid grid, Groups groups, double[][] statistics) {
        int filled = statistics[0].length;
        long[][] numbers = new long[5][filled];
        int at = 0;
        for (int i = 0; i < groups.size(); i++) {
            long count = groups.counts()[i];
            if (count > 0) {
                long min = grid.number(statistics[0][at]);
                numbers[0][at] = min;
                for (int s = 1; s < 4; s++) {
                    numbers[s][at] = grid.number(statistics[s][at]) - min;
                }
                numbers[4][at] = Math.round(statistics[4][at] * count * grid.divisor()) - count * min;
                at++;
            }
        }
        for (long[] column : numbers) {
            IntegerColumn.write(out, column);
        }
    }

    /** The groups of a channel that lie at such times. */
    static Groups read(BitReader in, int probe, int channel, long[] lows, long[] highs) {
        boolean onGrid = in.bits(1) == 1;
        long[] counts = IntegerColumn.read(in, lows.length);
        for (long count : counts) {
            if (count < 0) {
                throw new IllegalArgumentException("a group of " + count + " measurements");
            }
        }
        int filled = filled(counts);
        double[][] s = filled == 0 ? new double[5][0] : onGrid ? numbers(in, counts, filled) : values(in, filled);
        if (filled < counts.length) {
            spread(counts, s);
        }
        return new Groups(probe, channel, lows, highs, counts, s[0], s[1], s[4], s[2], s[3]);
    }

    private static double[][] values(BitReader in, int filled) {
        double[][] statistics = new double[5][];
        for (int s = 0; s < statistics.length; s++) {
            statistics[s] = ValueColumn.open(in, filled).range(0, filled);
        }
        return statistics;
    }

    private static double[][] numbers(BitReader in, long[] counts, int filled) {
        int index = (int) in.bits(6);
        if (index >= Grid.ALL.size()) {
            throw new IllegalArgumentException("statistics of unknown form " + index);
        }
        Grid grid = Grid.ALL.get(index);
        long[] mins = IntegerColumn.read(in, filled);
        double[][] statistics = new double[5][];
        statistics[0] = grid.values(mins);
        for (int s = 1; s < 4; s++) {
            long[] above = IntegerColumn.read(in, filled);
            for (int i = 0; i < filled; i++) {
                above[i] += mins[i];
            }
            statistics[s] = grid.values(above);
        }
        long[] sums = IntegerColumn.read(in, filled);
        double[] means = new double[filled];
        int at = 0;
        for (long count : counts) {
            if (count > 0) {
                means[at] = (sums[at] + count * mins[at]) / (count * grid.divisor());
                at++;
            }
        }
        statistics[4] = means;
        return statistics;
    }

    /** Puts NaN in for groups without a measurement. */
    private static void spread(long[] counts, double[][] statistics) {
        for (int s = 0; s < statistics.length; s++) {
            double[] all = new double[counts.length];
            int at = 0;
            for (int i = 0; i < counts.length; i++) {
                all[i] = counts[i] > 0 ? statistics[s][at++] : Double.NaN;
            }
            statistics[s] = all;
        }
    }
}
