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
        for (int i = 0; i < block.size(); i++) {
            long time = block.timesNanos()[i];
            if (block.statuses()[i] == 0 && holds(time)) {
                tallies[column(time)].add(block.values()[i]);
            }
        }
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
