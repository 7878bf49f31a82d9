package settlemark.codec;

import settlemark.session.SampleBlock;

/** Gathers measurements in the order in which they arrived, one by one or a group at a time. */
public final class Tally {
    private long count;
    private double sum;
    private double min = Double.NaN;
    private double max = Double.NaN;
    private double first = Double.NaN;
    private double last = Double.NaN;

    /** @param value NaN does not count */
    public void add(double value) {
        if (!Double.isNaN(value)) {
            add(1, value, value, value, value, value);
        }
    }

    /** Measurements of a block: what is not OK does not count. */
    public void add(SampleBlock block, int from, int to) {
        byte[] statuses = block.statuses();
        double[] values = block.values();
        for (int i = from; i < to; i++) {
            if (statuses[i] == 0) {
                add(values[i]);
            }
        }
    }

    /** A whole group. */
    public void add(Groups groups, int group) {
        if (groups.counts()[group] > 0) {
            add(
                    groups.counts()[group],
                    groups.means()[group] * groups.counts()[group],
                    groups.mins()[group],
                    groups.maxs()[group],
                    groups.firsts()[group],
                    groups.lasts()[group]);
        }
    }

    private void add(long more, double itsSum, double itsMin, double itsMax, double itsFirst, double itsLast) {
        if (count == 0) {
            min = itsMin;
            max = itsMax;
            first = itsFirst;
        }
        count += more;
        sum += itsSum;
        // Of -0.0 and 0.0 the former is smaller.
        min = Math.min(min, itsMin);
        max = Math.max(max, itsMax);
        last = itsLast;
    }

    public long count() {
        return count;
    }

    /** NaN where nothing was added, as are the others. */
    public double min() {
        return min;
    }

    public double max() {
        return max;
    }

    public double mean() {
        return count == 0 ? Double.NaN : sum / count;
    }

    public double first() {
        return first;
    }

    public double last() {
        return last;
    }
}
