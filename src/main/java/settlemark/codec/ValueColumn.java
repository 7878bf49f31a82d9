package settlemark.codec;

/**
 * Doubles as whole numbers on the coarsest {@link Grid} that holds nearly all of them. Those that it does not hold, such
 * as NaN and -0.0, are listed as runs of equal bits, and in the numbers the one before stands in for them.
 *
 * <p>Grid (6 bits), number of runs, each run (distance from the end of the one before, length, 64 bits), numbers.
 */
final class ValueColumn {
    /** One in so many values may be an exception; one always may. */
    private static final int EXCEPTION_IN = 64;

    private final Grid grid;
    private final int[] from;
    private final int[] to;
    private final long[] bits;
    private final IntegerColumn numbers;

    private ValueColumn(Grid grid, int[] from, int[] to, long[] bits, IntegerColumn numbers) {
        this.grid = grid;
        this.from = from;
        this.to = to;
        this.bits = bits;
        this.numbers = numbers;
    }

    /** @param values at least one */
    static void write(BitWriter out, double[] values, Effort effort) {
        int most = 1 + values.length / EXCEPTION_IN;
        long[] numbers = new long[values.length];
        int index = 0;
        int runs = Grid.ALL.get(0).fit(values, numbers, most);
        while (runs > most) {
            index++;
            runs = Grid.ALL.get(index).fit(values, numbers, most);
        }
        out.bits(index, 6);
        out.number(runs);
        if (runs > 0) {
            writeRuns(out, Grid.ALL.get(index), values);
        }
        IntegerColumn.write(out, numbers, effort);
    }

    private static void writeRuns(BitWriter out, Grid grid, double[] values) {
        int before = 0;
        for (int i = 0; i < values.length; i++) {
            if (!grid.holds(values[i])) {
                int end = Grid.endOfEqual(values, i);
                out.number(i - before);
                out.number(end - i);
                out.bits(Double.doubleToRawLongBits(values[i]), Long.SIZE);
                before = end;
                i = end - 1;
            }
        }
    }

    static ValueColumn open(BitReader in, int count) {
        int index = (int) in.bits(6);
        if (index >= Grid.ALL.size()) {
            throw new IllegalArgumentException("values of unknown form " + index);
        }
        int runs = in.number(count, "the number of exceptions");
        int[] from = new int[runs];
        int[] to = new int[runs];
        long[] bits = new long[runs];
        int before = 0;
        for (int i = 0; i < runs; i++) {
            from[i] = before + in.number(count - before, "an exception's place");
            to[i] = from[i] + in.number(count - from[i], "an exception's length");
            bits[i] = in.bits(Long.SIZE);
            before = to[i];
        }
        return new ValueColumn(Grid.ALL.get(index), from, to, bits, IntegerColumn.open(in, count));
    }

    /** Those from one on and before another. */
    double[] range(int first, int end) {
        double[] values = grid.values(numbers.range(first, end));
        for (int run = 0; run < bits.length; run++) {
            for (int i = Math.max(first, from[run]); i < Math.min(end, to[run]); i++) {
                values[i - first] = Double.longBitsToDouble(bits[run]);
            }
        }
        return values;
    }
}
