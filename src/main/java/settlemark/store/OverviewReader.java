package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.codec.Groups;
import settlemark.codec.PackedGroups;
import settlemark.codec.PackedSamples;
import settlemark.session.Overview;
import settlemark.session.SampleBlock;
import settlemark.session.Span;
import settlemark.session.StoreException;

/**
 * Makes overviews out of statistics where there are several groups for a column, and out of the samples themselves where
 * there are not. Within the caller's transaction.
 */
final class OverviewReader {
    /** With fewer groups for a column than this, a finer level is taken. */
    private static final int GROUPS_PER_COLUMN = 4;

    private static final String EXTENT = "SELECT count(*) FROM {t}sample_block"
            + " WHERE {key} = ? AND probe = ? AND high_nanos >= ? AND low_nanos <= ?";
    private static final String END =
            "SELECT coalesce(max(number) + 1, 0) FROM {t}summary WHERE {key} = ? AND probe = ? AND level = ?";
    private static final String SUMMARIES = "SELECT number, low_nanos, high_nanos, block FROM {t}summary"
            + " WHERE {key} = ? AND probe = ? AND level = ? AND number >= ? AND high_nanos >= ? AND low_nanos <= ?"
            + " ORDER BY number";

    private final Connection connection;
    private final Failures failures;
    private final Results results;
    private final long key;
    private final String name;
    private final int probe;
    private final SampleReader samples;
    private final List<OverviewColumns> channels = new ArrayList<>();
    private final Span span;
    private final int columns;

    OverviewReader(
            Connection connection,
            Failures failures,
            Results results,
            long key,
            String name,
            int probe,
            List<Integer> wanted,
            Span span,
            int columns) {
        this.connection = connection;
        this.failures = failures;
        this.results = results;
        this.key = key;
        this.name = name;
        this.probe = probe;
        this.samples = new SampleReader(connection, failures, results, key, name, probe);
        this.span = span;
        this.columns = columns;
        wanted.forEach(channel -> channels.add(new OverviewColumns(probe, channel, span, columns)));
    }

    List<Overview> read(Overview.Edges edges) throws SQLException, StoreException {
        int level = level(edges);
        if (level < 0) {
            for (OverviewColumns channel : channels) {
                channel.add(samples.samples(channel.channel(), span));
            }
        } else {
            readLevels(level, edges);
            for (OverviewColumns channel : channels) {
                for (SampleBlock block : samples.open(channel.channel(), span)) {
                    channel.add(block);
                }
            }
        }
        return channels.stream().map(OverviewColumns::overview).toList();
    }

    /** The coarsest that has enough groups; exact edges need the finest. -1 where not even that has enough. */
    private int level(Overview.Edges edges) throws SQLException {
        long blocks = ResultReader.count(connection, results.sql(EXTENT), key, probe, span.fromNanos(), span.toNanos());
        long groups = blocks * (Sealing.ROWS / Sealing.SAMPLES_PER_GROUP);
        long enough = (long) columns * GROUPS_PER_COLUMN;
        if (groups < enough) {
            return -1;
        }
        int level = 0;
        while (edges == Overview.Edges.ALIGNED && groups / Sealing.FAN >= enough) {
            groups /= Sealing.FAN;
            level++;
        }
        return level;
    }

    /** What a level does not reach yet is in the one below it. */
    private void readLevels(int top, Overview.Edges edges) throws SQLException, StoreException {
        long from = 0;
        for (int level = top; level >= 0; level--) {
            read(level, from, edges);
            from = Sealing.FAN * ResultReader.count(connection, results.sql(END), key, probe, level);
        }
    }

    private void read(int level, long from, Overview.Edges edges) throws SQLException, StoreException {
        try (PreparedStatement select = connection.prepareStatement(results.sql(SUMMARIES))) {
            select.setLong(1, key);
            select.setInt(2, probe);
            select.setInt(3, level);
            select.setLong(4, from);
            select.setLong(5, span.fromNanos());
            select.setLong(6, span.toNanos());
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    long number = row.getLong(1);
                    byte[] block = row.getBytes(4);
                    String what = "statistics of " + name + ", probe " + probe + ", from "
                            + SampleReader.seconds(row.getLong(2)) + " to " + SampleReader.seconds(row.getLong(3));
                    PackedGroups groups = failures.decode(what, () -> PackedGroups.of(block));
                    take(groups, what, number, edges);
                }
            }
        }
    }

    private void take(PackedGroups packed, String what, long number, Overview.Edges edges)
            throws SQLException, StoreException {
        @Nullable PackedSamples block = null;
        for (OverviewColumns channel : channels) {
            Optional<Groups> found = failures.decode(what, () -> packed.read(channel.channel()));
            if (found.isEmpty()) {
                continue;
            }
            Groups groups = found.get();
            for (int group = 0; group < groups.size(); group++) {
                if (edges == Overview.Edges.ALIGNED || channel.inOne(groups, group)) {
                    channel.add(groups, group);
                } else if (channel.meets(groups, group)) {
                    block = block == null ? samples.block(number) : block;
                    channel.add(some(block, channel.channel(), group, what));
                }
            }
        }
    }

    private SampleBlock some(PackedSamples block, int channel, int group, String what) throws StoreException {
        return failures.decode(what, () -> {
            PackedSamples.Part part = block.parts().stream()
                    .filter(p -> p.channel() == channel)
                    .findFirst()
                    .orElseThrow(() -> new IllegalArgumentException("channel " + channel + " has no samples there"));
            int from = group * Sealing.SAMPLES_PER_GROUP;
            return block.read(part, from, Math.min(part.samples(), from + Sealing.SAMPLES_PER_GROUP));
        });
    }
}
