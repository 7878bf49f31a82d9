package settlemark.store;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import settlemark.session.SampleBlock;

/** Samples of one probe that are not sealed yet, by channel in the order of arrival. */
final class ProbeColumns {
    private final int probe;
    private final Map<Integer, Column> columns = new TreeMap<>();

    ProbeColumns(int probe) {
        this.probe = probe;
    }

    void add(SampleBlock block) {
        columns.computeIfAbsent(block.channel(), c -> new Column()).add(block);
    }

    /** Of the channel that has most. */
    int rows() {
        return columns.values().stream().mapToInt(c -> c.size).max().orElse(0);
    }

    /** Up to so many samples of each channel from the oldest on; they stay. */
    List<SampleBlock> oldest(int most) {
        List<SampleBlock> blocks = new ArrayList<>();
        columns.forEach((channel, column) -> {
            if (column.size > 0) {
                blocks.add(column.oldest(probe, channel, Math.min(most, column.size)));
            }
        });
        return blocks;
    }

    void remove(int most) {
        columns.values().forEach(c -> c.remove(Math.min(most, c.size)));
    }

    private static final class Column {
        private long[] times = new long[256];
        private double[] values = new double[256];
        private byte[] statuses = new byte[256];
        private int size;

        void add(SampleBlock block) {
            int needed = size + block.size();
            if (needed > times.length) {
                int room = Math.max(needed, 2 * times.length);
                times = Arrays.copyOf(times, room);
                values = Arrays.copyOf(values, room);
                statuses = Arrays.copyOf(statuses, room);
            }
            System.arraycopy(block.timesNanos(), 0, times, size, block.size());
            System.arraycopy(block.values(), 0, values, size, block.size());
            System.arraycopy(block.statuses(), 0, statuses, size, block.size());
            size = needed;
        }

        SampleBlock oldest(int probe, int channel, int count) {
            return new SampleBlock(
                    probe,
                    channel,
                    Arrays.copyOf(times, count),
                    Arrays.copyOf(values, count),
                    Arrays.copyOf(statuses, count));
        }

        void remove(int count) {
            size -= count;
            System.arraycopy(times, count, times, 0, size);
            System.arraycopy(values, count, values, 0, size);
            System.arraycopy(statuses, count, statuses, 0, size);
        }
    }
}
