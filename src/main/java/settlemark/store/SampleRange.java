package settlemark.store;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;
import settlemark.session.SampleBlock;

/** Gathers the samples of one channel that lie in a stretch of time, out of blocks in the order of arrival. */
final class SampleRange {
    private final int probe;
    private final int channel;
    private final long fromNanos;
    private final long toNanos;
    private long[] times = new long[256];
    private double[] values = new double[256];
    private byte[] statuses = new byte[256];
    private int size;
    private long highNanos = Long.MIN_VALUE;
    private boolean ordered = true;

    SampleRange(int probe, int channel, long fromNanos, long toNanos) {
        this.probe = probe;
        this.channel = channel;
        this.fromNanos = fromNanos;
        this.toNanos = toNanos;
    }

    void add(SampleBlock block) {
        for (int i = 0; i < block.size(); i++) {
            long time = block.timesNanos()[i];
            if (time >= fromNanos && time <= toNanos) {
                add(time, block.values()[i], block.statuses()[i]);
            }
        }
    }

    private void add(long time, double value, byte status) {
        if (size == times.length) {
            times = Arrays.copyOf(times, size * 2);
            values = Arrays.copyOf(values, size * 2);
            statuses = Arrays.copyOf(statuses, size * 2);
        }
        highNanos = Math.max(highNanos, time);
        ordered &= size == 0 || times[size - 1] <= time;
        times[size] = time;
        values[size] = value;
        statuses[size] = status;
        size++;
    }

    /** The latest time so far; the least there is where nothing has come. */
    long highNanos() {
        return highNanos;
    }

    /** The sample with the latest time, of equal ones the last to come; empty where nothing has come. */
    SampleBlock last() {
        SampleBlock all = block();
        int from = Math.max(0, size - 1);
        return new SampleBlock(
                probe,
                channel,
                Arrays.copyOfRange(all.timesNanos(), from, size),
                Arrays.copyOfRange(all.values(), from, size),
                Arrays.copyOfRange(all.statuses(), from, size));
    }

    /** In order of time; samples of the same time keep the order in which they came. */
    SampleBlock block() {
        SampleBlock gathered = new SampleBlock(
                probe, channel, Arrays.copyOf(times, size), Arrays.copyOf(values, size), Arrays.copyOf(statuses, size));
        return ordered ? gathered : sorted(gathered);
    }

    /** A probe that dates its samples by itself may step back a little from one chunk to the next. */
    private static SampleBlock sorted(SampleBlock block) {
        int[] order = IntStream.range(0, block.size())
                .boxed()
                .sorted(Comparator.comparingLong(i -> block.timesNanos()[i]))
                .mapToInt(Integer::intValue)
                .toArray();
        long[] times = new long[order.length];
        double[] values = new double[order.length];
        byte[] statuses = new byte[order.length];
        for (int i = 0; i < order.length; i++) {
            times[i] = block.timesNanos()[order[i]];
            values[i] = block.values()[order[i]];
            statuses[i] = block.statuses()[order[i]];
        }
        return new SampleBlock(block.probe(), block.channel(), times, values, statuses);
    }
}
