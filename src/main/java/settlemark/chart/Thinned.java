package settlemark.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A trace with at most its first, least, greatest and last value in each pixel column, in order of time, so that the
 * drawn line is the same as if every sample were drawn and no spike is lost. Where the extents of two neighbouring columns
 * overlap, the last value of the one and the first of the other lie within what is inked anyway, and are left out if they are
 * no extremes: a noisy line has half as many corners, and stroking them is most of a frame. NaN stands at each gap.
 */
final class Thinned {
    private double[] seconds = new double[256];
    private double[] values = new double[256];
    private int size;
    private final List<Gap> gaps = new ArrayList<>();

    private Thinned() {}

    /**
     * Thins a trace.
     *
     * @param fromNanos left edge, where the seconds begin to count
     * @param toNanos right edge
     * @param endNanos up to where values are to be expected; a longer silence before it is a gap
     * @param columns pixel columns between the edges
     */
    static Thinned of(Lane.TraceLine trace, long fromNanos, long toNanos, long endNanos, int columns) {
        Thinned thinned = new Thinned();
        new Pass(thinned, trace, fromNanos, toNanos, Math.max(1, columns)).run(endNanos);
        return thinned;
    }

    static Thinned empty() {
        return new Thinned();
    }

    int size() {
        return size;
    }

    /** Seconds after the left edge. */
    double seconds(int index) {
        return seconds[index];
    }

    double value(int index) {
        return values[index];
    }

    List<Gap> gaps() {
        return gaps;
    }

    /** Least and greatest value between two times, empty where there is none. */
    Optional<double[]> extent(double fromSeconds, double toSeconds) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = from(fromSeconds); i < size && seconds[i] <= toSeconds; i++) {
            if (!Double.isNaN(values[i])) {
                low = Math.min(low, values[i]);
                high = Math.max(high, values[i]);
            }
        }
        return low > high ? Optional.empty() : Optional.of(new double[] {low, high});
    }

    /** The first that is not before a time; they are in order. */
    private int from(double atSeconds) {
        int at = Arrays.binarySearch(seconds, 0, size, atSeconds);
        if (at < 0) {
            return -at - 1;
        }
        while (at > 0 && seconds[at - 1] == atSeconds) {
            at--;
        }
        return at;
    }

    /** How many lie between two times and two values, all four counted. */
    int within(double fromSeconds, double toSeconds, double low, double high) {
        int count = 0;
        for (int i = from(fromSeconds); i < size && seconds[i] <= toSeconds; i++) {
            count += values[i] >= low && values[i] <= high ? 1 : 0;
        }
        return count;
    }

    void add(double second, double value) {
        if (size == seconds.length) {
            seconds = Arrays.copyOf(seconds, 2 * size);
            values = Arrays.copyOf(values, 2 * size);
        }
        seconds[size] = second;
        values[size++] = value;
    }

    /** One walk over the samples. */
    private static final class Pass {
        private final Thinned out;
        private final long[] times;
        private final double[] values;
        private final long longestStep;
        private final long from;
        private final long to;
        private final double nanosPerColumn;
        private long columnEnd = Long.MIN_VALUE;
        private int first = -1;
        private int least = -1;
        private int greatest = -1;
        private int last = -1;
        private double lowestBefore = Double.NaN;
        private double highestBefore = Double.NaN;
        private boolean lastBeforeIsNoExtreme;
        private boolean endedHigh;

        Pass(Thinned out, Lane.TraceLine trace, long from, long to, int columns) {
            this.out = out;
            this.times = trace.timesNanos();
            this.values = trace.values();
            this.longestStep = trace.longestStepNanos();
            this.from = from;
            this.to = to;
            this.nanosPerColumn = (double) (to - from) / columns;
        }

        void run(long endNanos) {
            int start = Arrays.binarySearch(times, from);
            // One sample outside each edge, so that the line runs on to the edge.
            start = Math.max(0, (start < 0 ? -start - 1 : start) - 1);
            int previous = -1;
            int index = start;
            for (; index < times.length; index++) {
                if (previous >= 0 && index - previous == 1) {
                    index = within(index);
                    previous = index - 1;
                    if (index == times.length) {
                        break;
                    }
                }
                if (Double.isFinite(values[index])) {
                    boolean next =
                            previous >= 0 && index - previous == 1 && times[index] - times[previous] <= longestStep;
                    if (next) {
                        take(index);
                    } else {
                        step(previous, index, start);
                    }
                    previous = index;
                    if (times[index] > to) {
                        break;
                    }
                }
            }
            flush();
            if (index == times.length) {
                silence(previous, endNanos);
            }
        }

        private void step(int previous, int index, int start) {
            boolean hole = previous >= 0 && (index - previous > 1 || times[index] - times[previous] > longestStep);
            boolean late = previous < 0 && index > start;
            if (hole || late) {
                flush();
                lowestBefore = Double.NaN;
                out.add(seconds(times[index]), Double.NaN);
                int before = hole ? previous : start;
                gap(times[before], times[index], hole ? values[before] : Double.NaN, values[index]);
            }
            take(index);
        }

        private void silence(int previous, long endNanos) {
            if (previous < 0) {
                return;
            }
            boolean closing = previous < times.length - 1;
            if (closing || endNanos - times[previous] > longestStep) {
                gap(times[previous], Math.max(endNanos, times[times.length - 1]), values[previous], Double.NaN);
            }
        }

        private void gap(long fromNanos, long toNanos, double before, double after) {
            if (toNanos > from && fromNanos < to) {
                out.gaps.add(new Gap(fromNanos, toNanos, before, after));
            }
        }

        private void take(int index) {
            // A division a column, not a sample: of millions of samples most lie in the column of the one before.
            if (times[index] >= columnEnd || first < 0) {
                flush();
                enter(times[index]);
                first = index;
                least = index;
                greatest = index;
            } else if (values[index] < values[least]) {
                least = index;
            } else if (values[index] > values[greatest]) {
                greatest = index;
            }
            last = index;
        }

        /**
         * Takes samples as long as they lie in the column of the one before and in the picture, without a hole: of
         * millions nearly all do. Returns the first that does not.
         */
        private int within(int from) {
            long end = Math.min(columnEnd, to);
            int index = from;
            int low = least;
            int high = greatest;
            double lowest = values[low];
            double highest = values[high];
            long before = times[from - 1];
            for (; index < times.length; index++) {
                long time = times[index];
                double value = values[index];
                if (time >= end || time - before > longestStep || !Double.isFinite(value)) {
                    break;
                }
                if (value < lowest) {
                    lowest = value;
                    low = index;
                } else if (value > highest) {
                    highest = value;
                    high = index;
                }
                before = time;
            }
            least = low;
            greatest = high;
            last = index - 1;
            return index;
        }

        private void enter(long timeNanos) {
            long column = (long) Math.floor((timeNanos - from) / nanosPerColumn);
            columnEnd = from + (long) Math.ceil((column + 1) * nanosPerColumn);
        }

        private void flush() {
            if (first < 0) {
                return;
            }
            int earlier = Math.min(least, greatest);
            int later = Math.max(least, greatest);
            // False where there is no column before: its extent is not a number then.
            boolean overlap = values[least] <= highestBefore && values[greatest] >= lowestBefore;
            // From one peak straight to the next the pen would run along the peaks, half its width outside of them.
            if (overlap && lastBeforeIsNoExtreme && endedHigh != greatest < least) {
                out.size--;
            }
            if (first < earlier && !overlap) {
                emit(first);
            }
            emit(earlier);
            if (later > earlier) {
                emit(later);
            }
            if (last > later) {
                emit(last);
            }
            lastBeforeIsNoExtreme = last > later;
            endedHigh = greatest > least;
            lowestBefore = values[least];
            highestBefore = values[greatest];
            first = -1;
        }

        private void emit(int index) {
            out.add(seconds(times[index]), values[index]);
        }

        private double seconds(long nanos) {
            return (nanos - from) / 1e9;
        }
    }
}
