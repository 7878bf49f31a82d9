package settlemark.codec;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * How doubles become whole numbers and come back bit for bit: as multiples of a power of a tenth or of a half, as the
 * bits of a float, or as their own bits.
 *
 * @param kind which of the four
 * @param divisor for multiples: what the whole number is divided by; a power of ten or of two, both exact
 */
record Grid(Kind kind, double divisor) {
    private static final double LARGEST_WHOLE = 1L << 53;
    private static final int FINEST_TENTH = 12;
    private static final int FINEST_HALF = 30;

    enum Kind {
        MULTIPLES,
        FLOAT,
        BITS
    }

    /** The coarsest first: the first that fits leaves the smallest numbers. Their order is part of the stored form. */
    static final List<Grid> ALL = all();

    private static List<Grid> all() {
        List<Grid> grids = new ArrayList<>();
        double tenth = 1;
        for (int i = 0; i <= FINEST_TENTH; i++) {
            grids.add(new Grid(Kind.MULTIPLES, tenth));
            tenth *= 10;
        }
        for (int i = 1; i <= FINEST_HALF; i++) {
            grids.add(new Grid(Kind.MULTIPLES, 1L << i));
        }
        grids.sort(Comparator.comparingDouble(Grid::divisor));
        grids.add(new Grid(Kind.FLOAT, 1));
        grids.add(new Grid(Kind.BITS, 1));
        return List.copyOf(grids);
    }

    /** Whether the value comes back the same. */
    boolean holds(double value) {
        return switch (kind) {
            case MULTIPLES -> fits(Math.rint(value * divisor), value);
            case FLOAT -> same((float) value, value);
            case BITS -> true;
        };
    }

    private static boolean same(double a, double b) {
        return Double.doubleToRawLongBits(a) == Double.doubleToRawLongBits(b);
    }

    /** Of a value that it holds. Bits are turned so that their order is that of the values. */
    long number(double value) {
        return switch (kind) {
            case MULTIPLES -> (long) Math.rint(value * divisor);
            case FLOAT -> {
                int bits = Float.floatToRawIntBits((float) value);
                yield bits < 0 ? bits ^ Integer.MAX_VALUE : bits;
            }
            case BITS -> {
                long bits = Double.doubleToRawLongBits(value);
                yield bits < 0 ? bits ^ Long.MAX_VALUE : bits;
            }
        };
    }

    /**
     * The numbers of those values that it holds, with the one before in the place of others.
     *
     * @param numbers to be filled in
     * @param most so many runs of others are borne
     * @return how many runs there are; where there are too many, just one more than most
     */
    int fit(double[] values, long[] numbers, int most) {
        int runs = 0;
        int at = held(values, numbers, 0);
        while (at < values.length && runs <= most) {
            int end = endOfEqual(values, at);
            Arrays.fill(numbers, at, end, at == 0 ? 0 : numbers[at - 1]);
            runs++;
            at = held(values, numbers, end);
        }
        return runs;
    }

    /** Fills in the numbers up to the first value that it does not hold, and returns that one's place. */
    private int held(double[] values, long[] numbers, int from) {
        int i = from;
        if (kind == Kind.MULTIPLES) {
            for (; i < values.length; i++) {
                double whole = Math.rint(values[i] * divisor);
                if (!fits(whole, values[i])) {
                    return i;
                }
                numbers[i] = (long) whole;
            }
        }
        while (i < values.length && holds(values[i])) {
            numbers[i] = number(values[i]);
            i++;
        }
        return i;
    }

    private boolean fits(double whole, double value) {
        // + 0.0 because the whole number has no sign of zero
        return Math.abs(whole) <= LARGEST_WHOLE && same((whole + 0.0) / divisor, value);
    }

    /** Behind the values that have the same bits. */
    static int endOfEqual(double[] values, int from) {
        long bits = Double.doubleToRawLongBits(values[from]);
        int end = from + 1;
        while (end < values.length && Double.doubleToRawLongBits(values[end]) == bits) {
            end++;
        }
        return end;
    }

    double[] values(long[] numbers) {
        double[] values = new double[numbers.length];
        if (kind == Kind.MULTIPLES) {
            for (int i = 0; i < values.length; i++) {
                values[i] = numbers[i] / divisor;
            }
        } else {
            for (int i = 0; i < values.length; i++) {
                values[i] = ofBits(numbers[i]);
            }
        }
        return values;
    }

    private double ofBits(long number) {
        if (kind == Kind.FLOAT) {
            return Float.intBitsToFloat((int) (number < 0 ? number ^ Integer.MAX_VALUE : number));
        }
        return Double.longBitsToDouble(number < 0 ? number ^ Long.MAX_VALUE : number);
    }
}
