package settlemark.store;

import settlemark.codec.Groups;
import settlemark.codec.Tally;
import settlemark.session.Overview;
import settlemark.session.SampleBlock;
import settlemark.session.Span;

/** One channel's columns of an overview while they are being filled. */
final class OverviewColumns {
    private final int probe;
    private final int channel;
    private final Span span;
    private final Tally[] tallies;
    private final double columnsPerNano;

    OverviewColumns(int probe, int channel, Span span, int columns) {
        this.probe = probe;
        this.channel = channel;
        this.span = span;
        this.tallies = new Tally[columns];
        for (int i = 0; i < columns; i++) {
            tallies[i] = new Tally();
        }
        this.columnsPerNano = columns / ((double) span.toNanos() - span.fromNanos() + 1);
    }

    int channel() {
        return channel;
    }

    private boolean holds(long nanos) {
        return nanos >= span.fromNanos() && nanos <= span.toNanos();
    }

    private int column(long nanos) {
        return Math.min(tallies.length - 1, (int) ((nanos - span.fromNanos()) * columnsPerNano));
    }

    /** Whether a group lies in a single column. */
    boolean inOne(Groups groups, int group) {
        long low = groups.lows()[group];
        long high = groups.highs()[group];
        return holds(low) && holds(high) && column(low) == column(high);
    }

    boolean meets(Groups groups, int group) {
        return groups.highs()[group] >= span.fromNanos() && groups.lows()[group] <= span.toNanos();
    }

    /** Counts a whole group where its first sample lies. */
    void add(Groups groups, int group) {
        long low = groups.lows()[group];
        if (holds(low)) {
            tallies[column(low)].add(groups, group);
        }
    }

    void add(SampleBlock block) {
        long[] times = block.timesNanos();
        boolean ascending = ascending(times);
        int from = 0;
        while (from < times.length) {
            int to = ascending ? endOfColumn(times, from) : from + 1;
            if (holds(times[from])) {
                tallies[column(times[from])].add(block, from, to);
            }
            from = to;
        }
    }

    private static boolean ascending(long[] times) {
        boolean ascending = true;
        for (int i = 1; i < times.length; i++) {
            ascending &= times[i - 1] <= times[i];
        }
        return ascending;
    }

    /** Behind the times that lie in the same column as the first of them, looked for in steps that grow. */
    private int endOfColumn(long[] times, int from) {
        int place = place(times[from]);
        int within = from;
        int step = 1;
        while (within + step < times.length && place(times[within + step]) == place) {
            within += step;
            step *= 2;
        }
        int beyond = Math.min(times.length, within + step);
        while (beyond - within > 1) {
            int middle = (within + beyond) >>> 1;
            if (place(times[middle]) == place) {
                within = middle;
            } else {
                beyond = middle;
            }
        }
        return beyond;
    }

    /** The column, or -1 before the first and their number behind the last. */
    private int place(long nanos) {
        if (nanos < span.fromNanos()) {
            return -1;
        }
        return nanos > span.toNanos() ? tallies.length : column(nanos);
    }

    Overview overview() {
        int columns = tallies.length;
        Overview overview = new Overview(
                probe,
                channel,
                span,
                new long[columns],
                new double[columns],
                new double[columns],
                new double[columns],
                new double[columns],
                new double[columns]);
        for (int i = 0; i < columns; i++) {
            overview.counts()[i] = tallies[i].count();
            overview.mins()[i] = tallies[i].min();
            overview.maxs()[i] = tallies[i].max();
            overview.means()[i] = tallies[i].mean();
            overview.firsts()[i] = tallies[i].first();
            overview.lasts()[i] = tallies[i].last();
        }
        return overview;
    }
}
