package settlemark.session;

import java.util.Arrays;
import settlemark.measure.SampleStatus;

/** Gathers one channel's samples until they are written. */
final class SampleColumn {
    private long[] times = new long[64];
    private double[] values = new double[64];
    private byte[] statuses = new byte[64];
    private int count;

    void add(long timeNanos, double value, SampleStatus status) {
        if (count == times.length) {
            times = Arrays.copyOf(times, count * 2);
            values = Arrays.copyOf(values, count * 2);
            statuses = Arrays.copyOf(statuses, count * 2);
        }
        times[count] = timeNanos;
        values[count] = value;
        statuses[count] = (byte) status.ordinal();
        count++;
    }

    int size() {
        return count;
    }

    /** What was gathered since the last call. */
    SampleBlock drain(int probe, int channel) {
        SampleBlock block = new SampleBlock(
                probe,
                channel,
                Arrays.copyOf(times, count),
                Arrays.copyOf(values, count),
                Arrays.copyOf(statuses, count));
        count = 0;
        return block;
    }
}
