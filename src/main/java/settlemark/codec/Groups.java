package settlemark.codec;

import java.util.Arrays;
import java.util.List;
import settlemark.session.SampleBlock;

/**
 * Statistics of the samples of one channel, group by group in the order of arrival. Only what is a measurement counts:
 * status OK and not NaN. Of a group without any, all but the times are 0 and NaN.
 *
 * @param probe index in the header
 * @param channel index in the probe's profile
 * @param lows time of each group's earliest sample, in session nanoseconds
 * @param highs time of its latest
 * @param counts measurements in it
 * @param mins smallest
 * @param maxs largest
 * @param means arithmetic mean, to within the rounding of doubles
 * @param firsts the first to arrive
 * @param lasts the last to arrive
 */
public record Groups(
        int probe,
        int channel,
        long[] lows,
        long[] highs,
        long[] counts,
        double[] mins,
        double[] maxs,
        double[] means,
        double[] firsts,
        double[] lasts) {
    public Groups {
        boolean equallyMany = lows.length == highs.length
                && lows.length == counts.length
                && lows.length == mins.length
                && lows.length == maxs.length
                && lows.length == means.length
                && lows.length == firsts.length
                && lows.length == lasts.length;
        if (!equallyMany) {
            throw new IllegalArgumentException("every statistic must have a value for each group");
        }
    }

    private static Groups empty(int probe, int channel, int groups) {
        return empty(probe, channel, new long[groups], new long[groups]);
    }

    /** Of a channel that has no samples. */
    public static Groups none(int probe, int channel) {
        return empty(probe, channel, 0);
    }

    static Groups empty(int probe, int channel, long[] lows, long[] highs) {
        int groups = lows.length;
        double[][] none = new double[5][groups];
        for (double[] statistic : none) {
            Arrays.fill(statistic, Double.NaN);
        }
        return new Groups(probe, channel, lows, highs, new long[groups], none[0], none[1], none[2], none[3], none[4]);
    }

    public int size() {
        return lows.length;
    }

    /**
     * The statistics of a block, cut into groups of so many samples; the last may have fewer.
     *
     * @param block at least one sample
     */
    public static Groups of(SampleBlock block, int samplesPerGroup) {
        int count = (block.size() + samplesPerGroup - 1) / samplesPerGroup;
        Groups groups = empty(block.probe(), block.channel(), count);
        for (int group = 0; group < count; group++) {
            int from = group * samplesPerGroup;
            groups.set(group, block, from, Math.min(block.size(), from + samplesPerGroup));
        }
        return groups;
    }

    private void set(int group, SampleBlock block, int from, int to) {
        Tally tally = new Tally();
        long low = Long.MAX_VALUE;
        long high = Long.MIN_VALUE;
        for (int i = from; i < to; i++) {
            low = Math.min(low, block.timesNanos()[i]);
            high = Math.max(high, block.timesNanos()[i]);
        }
        tally.add(block, from, to);
        set(group, low, high, tally);
    }

    private void set(int group, long low, long high, Tally tally) {
        lows[group] = low;
        highs[group] = high;
        counts[group] = tally.count();
        mins[group] = tally.min();
        maxs[group] = tally.max();
        means[group] = tally.mean();
        firsts[group] = tally.first();
        lasts[group] = tally.last();
    }

    /** The same with so many groups made one; the last may be of fewer. */
    public Groups merged(int by) {
        int count = (size() + by - 1) / by;
        Groups merged = empty(probe, channel, count);
        for (int group = 0; group < count; group++) {
            Tally tally = new Tally();
            long low = Long.MAX_VALUE;
            long high = Long.MIN_VALUE;
            for (int i = group * by; i < Math.min(size(), group * by + by); i++) {
                low = Math.min(low, lows[i]);
                high = Math.max(high, highs[i]);
                tally.add(this, i);
            }
            merged.set(group, low, high, tally);
        }
        return merged;
    }

    /** The groups of a channel one after the other. */
    public static Groups joined(List<Groups> parts) {
        int count = parts.stream().mapToInt(Groups::size).sum();
        Groups all = empty(parts.get(0).probe, parts.get(0).channel, count);
        int at = 0;
        for (Groups part : parts) {
            int size = part.size();
            System.arraycopy(part.lows, 0, all.lows, at, size);
            System.arraycopy(part.highs, 0, all.highs, at, size);
            System.arraycopy(part.counts, 0, all.counts, at, size);
            System.arraycopy(part.mins, 0, all.mins, at, size);
            System.arraycopy(part.maxs, 0, all.maxs, at, size);
            System.arraycopy(part.means, 0, all.means, at, size);
            System.arraycopy(part.firsts, 0, all.firsts, at, size);
            System.arraycopy(part.lasts, 0, all.lasts, at, size);
            at += size;
        }
        return all;
    }
}
