package settlemark.codec;

/**
 * Times as what is left of them beside the line from the first to the last: the first time, the mean step in whole
 * nanoseconds, and the rests as an {@link IntegerColumn}.
 */
final class TimeColumn {
    private final long first;
    private final long step;
    private final IntegerColumn rests;

    private TimeColumn(long first, long step, IntegerColumn rests) {
        this.first = first;
        this.step = step;
        this.rests = rests;
    }

    /** @param times at least one */
    static void write(BitWriter out, long[] times, Effort effort) {
        int count = times.length;
        long step = count == 1 ? 0 : Math.round(((double) times[count - 1] - times[0]) / (count - 1));
        out.signed(times[0]);
        out.signed(step);
        long[] rests = new long[count];
        for (int i = 0; i < count; i++) {
            rests[i] = times[i] - (times[0] + i * step);
        }
        IntegerColumn.write(out, rests, effort);
    }

    static TimeColumn open(BitReader in, int count) {
        return new TimeColumn(in.signed(), in.signed(), IntegerColumn.open(in, count));
    }

    /** Those from one on and before another. */
    long[] range(int from, int to) {
        long[] times = rests.range(from, to);
        for (int i = 0; i < times.length; i++) {
            times[i] += first + (from + i) * step;
        }
        return times;
    }
}
