package settlemark.session;

import java.util.Arrays;
import java.util.List;
import settlemark.measure.Conversion;

/**
 * The recent past of a channel; immutable. Made of sealed blocks that snapshots share and a copied tail. Values are in
 * the job's unit before the zero is taken off; NaN marks a gap or a value that was no measurement.
 */
public final class Trace {
    /** Samples in a sealed block. */
    static final int BLOCK = 1024;

    private final List<Block> sealed;
    private final Block tail;
    private final int size;
    private final Conversion change;

    Trace(List<Block> sealed, Block tail) {
        this(sealed, tail, Conversion.IDENTITY);
    }

    private Trace(List<Block> sealed, Block tail, Conversion change) {
        this.change = change;
        this.sealed = sealed;
        this.tail = tail;
        this.size = sealed.size() * BLOCK + tail.timesNanos.length;
    }

    record Block(long[] timesNanos, double[] values) {}

    public int size() {
        return size;
    }

    public long timeNanos(int index) {
        return block(index).timesNanos[index % BLOCK];
    }

    public double value(int index) {
        return change.apply(block(index).values[index % BLOCK]);
    }

    /** The same in another unit; nothing is copied. */
    public Trace in(Conversion next) {
        return new Trace(sealed, tail, change.then(next));
    }

    /** Index of the first sample at or after a time, the size where there is none. */
    public int firstAtOrAfter(long timeNanos) {
        int low = 0;
        int high = size;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (timeNanos(middle) < timeNanos) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** A copy of a stretch of time, both ends included. */
    public Part part(long fromNanos, long toNanos) {
        int from = firstAtOrAfter(fromNanos);
        int to = Math.max(from, firstAtOrAfter(toNanos + 1));
        long[] times = new long[to - from];
        double[] values = new double[to - from];
        for (int i = from; i < to; i++) {
            times[i - from] = timeNanos(i);
            values[i - from] = value(i);
        }
        return new Part(times, values);
    }

    /** Times and values of equal length. */
    public record Part(long[] timesNanos, double[] values) {
        public Part minus(double offset) {
            double[] shifted = Arrays.copyOf(values, values.length);
            for (int i = 0; i < shifted.length; i++) {
                shifted[i] -= offset;
            }
            return new Part(timesNanos, shifted);
        }
    }

    private Block block(int index) {
        int block = index / BLOCK;
        return block < sealed.size() ? sealed.get(block) : tail;
    }
}
