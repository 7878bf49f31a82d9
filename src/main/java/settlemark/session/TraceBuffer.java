package settlemark.session;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Gathers a channel's recent past; the oldest block goes when it is full. */
final class TraceBuffer {
    /** About six hours at ten a second. */
    private static final int MOST_BLOCKS = 216;

    private final List<Trace.Block> sealed = new ArrayList<>();
    private final long[] times = new long[Trace.BLOCK];
    private final double[] values = new double[Trace.BLOCK];
    private int count;

    void add(long timeNanos, double value) {
        times[count] = timeNanos;
        values[count] = value;
        count++;
        if (count == Trace.BLOCK) {
            sealed.add(new Trace.Block(times.clone(), values.clone()));
            count = 0;
            if (sealed.size() > MOST_BLOCKS) {
                sealed.remove(0);
            }
        }
    }

    Trace trace() {
        return new Trace(
                List.copyOf(sealed), new Trace.Block(Arrays.copyOf(times, count), Arrays.copyOf(values, count)));
    }
}
