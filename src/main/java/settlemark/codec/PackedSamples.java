package settlemark.codec;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import settlemark.session.SampleBlock;

/**
 * Samples of any channels as bytes. Channels of a probe that arrived together share their column of times. Damage in one
 * channel's column is found by its digest and costs only that channel.
 */
public final class PackedSamples {
    private final ColumnSet columns;
    private final List<Part> parts;

    /** What has been opened so far, by table and, of the others, by place. */
    private final @Nullable TimeColumn[] times;

    private final List<@Nullable Opened[]> opened = new ArrayList<>();

    private int lastTable = -1;
    private int lastFrom;
    private int lastTo;
    private long[] lastTimes = {};

    private PackedSamples(ColumnSet columns) {
        this.columns = columns;
        this.parts = parts(columns);
        this.times = new TimeColumn[columns.tables().size()];
        columns.tables().forEach(t -> opened.add(new Opened[t.channels().size()]));
    }

    private record Opened(byte[] statuses, ValueColumn values) {}

    /**
     * Samples of one channel.
     *
     * @param table which times are theirs
     * @param place where in the table's channels
     * @param samples how many
     * @param lowNanos time of the earliest
     * @param highNanos time of the latest
     */
    public record Part(int table, int place, int probe, int channel, int samples, long lowNanos, long highNanos) {}

    /** @param blocks in the order in which they are to come back; empty ones are left out */
    public static byte[] pack(List<SampleBlock> blocks) {
        return pack(blocks, Effort.THOROUGH);
    }

    /** The same in a hurry, and a little longer: for what is soon packed again. */
    public static byte[] packQuickly(List<SampleBlock> blocks) {
        return pack(blocks, Effort.QUICK);
    }

    private static byte[] pack(List<SampleBlock> blocks, Effort effort) {
        List<List<SampleBlock>> tables = new ArrayList<>();
        for (SampleBlock block : blocks) {
            for (int from = 0; from < block.size(); from += ColumnSet.MOST_ROWS) {
                place(tables, piece(block, from, Math.min(block.size(), from + ColumnSet.MOST_ROWS)));
            }
        }
        return ColumnSet.write(tables.stream().map(t -> draft(t, effort)).toList());
    }

    private static SampleBlock piece(SampleBlock block, int from, int to) {
        if (from == 0 && to == block.size()) {
            return block;
        }
        return new SampleBlock(
                block.probe(),
                block.channel(),
                Arrays.copyOfRange(block.timesNanos(), from, to),
                Arrays.copyOfRange(block.values(), from, to),
                Arrays.copyOfRange(block.statuses(), from, to));
    }

    private static void place(List<List<SampleBlock>> tables, SampleBlock block) {
        for (List<SampleBlock> table : tables) {
            SampleBlock first = table.get(0);
            boolean fits = first.probe() == block.probe()
                    && Arrays.equals(first.timesNanos(), block.timesNanos())
                    && table.stream().noneMatch(b -> b.channel() == block.channel());
            if (fits) {
                table.add(block);
                return;
            }
        }
        tables.add(new ArrayList<>(List.of(block)));
    }

    private static ColumnSet.Draft draft(List<SampleBlock> table, Effort effort) {
        long[] times = table.get(0).timesNanos();
        BitWriter shared = new BitWriter();
        TimeColumn.write(shared, times, effort);
        List<ColumnSet.DraftChannel> channels = new ArrayList<>();
        for (SampleBlock block : table) {
            BitWriter column = new BitWriter();
            StatusColumn.write(column, block.statuses());
            ValueColumn.write(column, block.values(), effort);
            channels.add(new ColumnSet.DraftChannel(block.probe(), block.channel(), column.bytes()));
        }
        long low = Arrays.stream(times).min().orElseThrow();
        long high = Arrays.stream(times).max().orElseThrow();
        return new ColumnSet.Draft(times.length, low, high, shared.bytes(), channels);
    }

    /** @throws IllegalArgumentException where the bytes are no samples, or the list of what is in them is damaged */
    public static PackedSamples of(byte[] bytes) {
        return new PackedSamples(ColumnSet.read(bytes));
    }

    private static List<Part> parts(ColumnSet columns) {
        List<Part> parts = new ArrayList<>();
        for (int t = 0; t < columns.tables().size(); t++) {
            ColumnSet.Table table = columns.tables().get(t);
            for (int c = 0; c < table.channels().size(); c++) {
                ColumnSet.Channel channel = table.channels().get(c);
                parts.add(new Part(t, c, channel.probe(), channel.channel(), table.rows(), table.low(), table.high()));
            }
        }
        return List.copyOf(parts);
    }

    /** What is in it, each channel's parts in the order in which they came. */
    public List<Part> parts() {
        return parts;
    }

    /** @throws IllegalArgumentException where that channel's values or its times are damaged */
    public SampleBlock read(Part part) {
        return read(part, 0, part.samples);
    }

    /**
     * Some of a part's samples, without reading the others.
     *
     * @param from the first, from 0
     * @param to behind the last
     * @throws IllegalArgumentException where that channel's values or its times are damaged
     */
    public SampleBlock read(Part part, int from, int to) {
        Opened column = opened(part);
        return new SampleBlock(
                part.probe,
                part.channel,
                times(part.table, from, to),
                column.values.range(from, to),
                Arrays.copyOfRange(column.statuses, from, to));
    }

    private Opened opened(Part part) {
        ColumnSet.Table table = columns.tables().get(part.table);
        @Nullable Opened[] ofTable = opened.get(part.table);
        Opened known = ofTable[part.place];
        if (known == null) {
            BitReader in = columns.column(table.channels().get(part.place).column());
            byte[] statuses = StatusColumn.read(in, table.rows());
            known = new Opened(statuses, ValueColumn.open(in, table.rows()));
            in.finish();
            ofTable[part.place] = known;
        }
        return known;
    }

    /**
     * Those from the first to the last that lie in a stretch of time, with what lies between them where times step back.
     *
     * @throws IllegalArgumentException where that channel's values or its times are damaged
     */
    public SampleBlock between(Part part, long fromNanos, long toNanos) {
        if (part.lowNanos >= fromNanos && part.highNanos <= toNanos) {
            return read(part);
        }
        long[] all = times(part.table, 0, part.samples);
        int first = all.length;
        int end = 0;
        for (int i = 0; i < all.length; i++) {
            if (all[i] >= fromNanos && all[i] <= toNanos) {
                first = Math.min(first, i);
                end = i + 1;
            }
        }
        return end == 0 ? read(part, 0, 0) : read(part, first, end);
    }

    /** The last ones are kept: the channels of a table are mostly asked for one after the other. */
    private long[] times(int index, int from, int to) {
        if (index != lastTable || from != lastFrom || to != lastTo) {
            TimeColumn column = times[index];
            if (column == null) {
                ColumnSet.Table table = columns.tables().get(index);
                BitReader in = columns.column(table.shared());
                column = TimeColumn.open(in, table.rows());
                in.finish();
                times[index] = column;
            }
            lastTimes = column.range(from, to);
            lastTable = index;
            lastFrom = from;
            lastTo = to;
        }
        return lastTimes;
    }
}
