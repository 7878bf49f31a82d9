package settlemark.codec;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Statistics of any channels of a probe as bytes. Channels whose groups have the same times share these. */
public final class PackedGroups {
    private final ColumnSet columns;

    /** Earliest and latest times of each table's groups, as far as they have been read. */
    private final long[] @Nullable [][] times;

    private PackedGroups(ColumnSet columns) {
        this.columns = columns;
        this.times = new long[columns.tables().size()][][];
    }

    /** @param channels each at most once, and each with at least one group */
    public static byte[] pack(List<Groups> channels) {
        List<List<Groups>> tables = new ArrayList<>();
        for (Groups channel : channels) {
            tables.stream()
                    .filter(t -> Arrays.equals(t.get(0).lows(), channel.lows())
                            && Arrays.equals(t.get(0).highs(), channel.highs()))
                    .findFirst()
                    .orElseGet(() -> {
                        tables.add(new ArrayList<>());
                        return tables.get(tables.size() - 1);
                    })
                    .add(channel);
        }
        return ColumnSet.write(tables.stream().map(PackedGroups::draft).toList());
    }

    private static ColumnSet.Draft draft(List<Groups> table) {
        Groups first = table.get(0);
        BitWriter shared = new BitWriter();
        TimeColumn.write(shared, first.lows(), Effort.THOROUGH);
        long[] spans = new long[first.size()];
        Arrays.setAll(spans, i -> first.highs()[i] - first.lows()[i]);
        IntegerColumn.write(shared, spans);
        List<ColumnSet.DraftChannel> channels = new ArrayList<>();
        for (Groups groups : table) {
            BitWriter column = new BitWriter();
            GroupColumn.write(column, groups);
            channels.add(new ColumnSet.DraftChannel(groups.probe(), groups.channel(), column.bytes()));
        }
        long low = Arrays.stream(first.lows()).min().orElseThrow();
        long high = Arrays.stream(first.highs()).max().orElseThrow();
        return new ColumnSet.Draft(first.size(), low, high, shared.bytes(), channels);
    }

    /** @throws IllegalArgumentException where the bytes are no statistics, or the list of what is in them is damaged */
    public static PackedGroups of(byte[] bytes) {
        return new PackedGroups(ColumnSet.read(bytes));
    }

    /** Every channel's. */
    public List<Groups> all() {
        List<Groups> all = new ArrayList<>();
        for (int table = 0; table < times.length; table++) {
            for (ColumnSet.Channel channel : columns.tables().get(table).channels()) {
                all.add(read(table, channel));
            }
        }
        return all;
    }

    /**
     * One channel's; empty where it is not among them.
     *
     * @throws IllegalArgumentException where they are damaged
     */
    public Optional<Groups> read(int channel) {
        for (int table = 0; table < times.length; table++) {
            for (ColumnSet.Channel candidate : columns.tables().get(table).channels()) {
                if (candidate.channel() == channel) {
                    return Optional.of(read(table, candidate));
                }
            }
        }
        return Optional.empty();
    }

    private Groups read(int table, ColumnSet.Channel channel) {
        long[][] limits = times(table);
        BitReader column = columns.column(channel.column());
        Groups groups = GroupColumn.read(column, channel.probe(), channel.channel(), limits[0], limits[1]);
        column.finish();
        return groups;
    }

    private long[][] times(int index) {
        long[][] known = times[index];
        if (known == null) {
            ColumnSet.Table table = columns.tables().get(index);
            BitReader in = columns.column(table.shared());
            long[] lows = TimeColumn.open(in, table.rows()).range(0, table.rows());
            long[] highs = IntegerColumn.read(in, table.rows());
            in.finish();
            for (int i = 0; i < lows.length; i++) {
                highs[i] += lows[i];
            }
            known = new long[][] {lows, highs};
            times[index] = known;
        }
        return known;
    }
}
