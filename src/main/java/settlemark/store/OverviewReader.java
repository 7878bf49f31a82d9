package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import settlemark.codec.Groups;
import settlemark.codec.PackedGroups;
import settlemark.codec.PackedSamples;
import settlemark.session.Overview;
import settlemark.session.SampleBlock;
import settlemark.session.Span;
import settlemark.session.StoreException;

/**
 * Makes overviews out of statistics, and out of the samples themselves where a group lies in more than one column and
 * edges are to be exact, or there are only a few groups for a column. Within the caller's transaction.
 */
final class OverviewReader {
    /** With fewer groups for a column than this, a finer level is taken. */
    private static final int GROUPS_PER_COLUMN = 4;

    private static final String EXTENT = "SELECT count(*) FROM {t}sample_block"
            + " WHERE {key} = ? AND probe = ? AND high_nanos >= ? AND low_nanos <= ?";
    private static final String END =
            "SELECT coalesce(max(number) + 1, 0) FROM {t}summary WHERE {key} = ? AND probe = ? AND level = ?";
    private static final String LOWEST = "SELECT number, low_nanos, high_nanos, summary FROM {t}sample_block"
            + " WHERE {key} = ? AND probe = ? AND number >= ? AND high_nanos >= ? AND low_nanos <= ? ORDER BY number";
    private static final String SUMMARIES = "SELECT number, low_nanos, high_nanos, block FROM {t}summary"
            + " WHERE {key} = ? AND probe = ? AND number >= ? AND high_nanos >= ? AND low_nanos <= ? AND level = ?"
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
        long blocks = ResultReader.count(connection, results.sql(EXTENT), key, probe, span.fromNanos(), span.toNanos());
        long groups = blocks * (Sealing.ROWS / Sealing.SAMPLES_PER_GROUP);
        long enough = (long) columns * GROUPS_PER_COLUMN;
        boolean aligned = edges == Overview.Edges.ALIGNED && groups >= enough;
        int level = 0;
        while (aligned && groups / Sealing.FAN >= enough) {
            groups /= Sealing.FAN;
            level++;
        }
        readLevels(level, aligned);
        for (OverviewColumns channel : channels) {
            for (SampleBlock block : samples.open(channel.channel(), span)) {
                channel.add(block);
            }
        }
        return channels.stream().map(OverviewColumns::overview).toList();
    }

    /** What a level does not reach yet is in the one below it. */
    private void readLevels(int top, boolean aligned) throws SQLException, StoreException {
        long from = 0;
        for (int level = top; level >= 0; level--) {
            read(level, from, aligned);
            from = level == 0 ? 0 : Sealing.FAN * ResultReader.count(connection, results.sql(END), key, probe, level);
        }
    }

    private void read(int level, long from, boolean aligned) throws SQLException, StoreException {
        try (PreparedStatement select = connection.prepareStatement(results.sql(level == 0 ? LOWEST : SUMMARIES));
                PreparedStatement blocks = samples.selectBlock()) {
            select.setLong(1, key);
            select.setInt(2, probe);
            select.setLong(3, from);
            select.setLong(4, span.fromNanos());
            select.setLong(5, span.toNanos());
            if (level > 0) {
                select.setInt(6, level);
            }
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    Row found = new Row(row.getLong(1), row.getLong(2), row.getLong(3), row.getBytes(4));
                    PackedGroups groups = failures.decode(() -> words(found), () -> PackedGroups.of(found.groups));
                    take(groups, found, aligned, blocks);
                }
            }
        }
    }

    private record Row(long number, long lowNanos, long highNanos, byte[] groups) {}

    private String words(Row row) {
        return "statistics of " + name + ", probe " + probe + ", from " + SampleReader.seconds(row.lowNanos) + " to "
                + SampleReader.seconds(row.highNanos);
    }

    private void take(PackedGroups packed, Row row, boolean aligned, PreparedStatement blocks)
            throws SQLException, StoreException {
        List<Groups> found = new ArrayList<>();
        int most = 0;
        for (OverviewColumns channel : channels) {
            Groups groups = failures.decode(() -> words(row), () -> packed.read(channel.channel()))
                    .orElseGet(() -> Groups.none(probe, channel.channel()));
            found.add(groups);
            most = Math.max(most, groups.size());
        }
        @Nullable PackedSamples block = null;
        // Channel after channel of one group, because they share its times.
        for (int group = 0; group < most; group++) {
            for (int c = 0; c < found.size(); c++) {
                Groups groups = found.get(c);
                OverviewColumns channel = channels.get(c);
                if (group >= groups.size()) {
                    continue;
                }
                if (aligned || channel.inOne(groups, group)) {
                    channel.add(groups, group);
                } else if (channel.meets(groups, group)) {
                    block = block == null ? samples.block(blocks, row.number) : block;
                    channel.add(some(block, channel.channel(), group, row));
                }
            }
        }
    }

    private SampleBlock some(PackedSamples block, int channel, int group, Row row) throws StoreException {
        return failures.decode(() -> words(row), () -> {
            PackedSamples.Part part = block.parts().stream()
                    .filter(p -> p.channel() == channel)
                    .findFirst()
                    .orElseThrow(() -> new IllegalArgumentException("channel " + channel + " has no samples there"));
            int from = group * Sealing.SAMPLES_PER_GROUP;
            return block.read(part, from, Math.min(part.samples(), from + Sealing.SAMPLES_PER_GROUP));
        });
    }
}
