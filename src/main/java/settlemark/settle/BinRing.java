package settlemark.settle;

/**
 * The last samples, gathered in bins of equal width on a grid that begins at time 0, so that every second weighs the same
 * however fast and however irregularly the samples come. Empty bins take no place. The open bin is not among the closed.
 */
final class BinRing {
    /** As many times its length a swing is remembered after its end. */
    private static final double REMEMBERED = 3;

    private final double widthSeconds;
    private final double[] meanSeconds;
    private final double[] meanValue;
    private final double[] leastValue;
    private final double[] mostValue;
    private final double[] firstSeconds;
    private int head;
    private int size;

    private long openIndex;
    private int openCount;
    private double openFirstSeconds;
    private double openSeconds;
    private double openValue;
    private double openLeast;
    private double openMost;

    BinRing(double widthSeconds, int capacity) {
        this.widthSeconds = widthSeconds;
        meanSeconds = new double[capacity];
        meanValue = new double[capacity];
        leastValue = new double[capacity];
        mostValue = new double[capacity];
        firstSeconds = new double[capacity];
    }

    /** Takes one sample in; true where this closed a bin. Times increase. */
    boolean add(double seconds, double value) {
        long index = (long) Math.floor(seconds / widthSeconds + SettleDetector.TIME_TOLERANCE_SECONDS);
        boolean closes = openCount > 0 && index != openIndex;
        if (closes) {
            close();
        }
        if (openCount == 0) {
            openIndex = index;
            openFirstSeconds = seconds;
            openSeconds = 0;
            openValue = 0;
            openLeast = value;
            openMost = value;
        }
        openCount++;
        // Running means: exact for a constant, which sums are not.
        openSeconds += (seconds - openSeconds) / openCount;
        openValue += (value - openValue) / openCount;
        openLeast = Math.min(openLeast, value);
        openMost = Math.max(openMost, value);
        return closes;
    }

    void clear() {
        head = 0;
        size = 0;
        openCount = 0;
    }

    /** Forgets the closed bins whose mean time is not later than the given one. */
    void dropUntil(double seconds) {
        int dropped = firstAfter(seconds);
        head = (head + dropped) % meanSeconds.length;
        size -= dropped;
    }

    /** Number of closed bins kept. */
    int size() {
        return size;
    }

    /** Index, oldest first, of the first closed bin whose mean time is later than the given one. */
    int firstAfter(double seconds) {
        int later = size;
        int notLater = -1;
        while (later - notLater > 1) {
            int middle = (later + notLater) >>> 1;
            if (meanSeconds(middle) > seconds) {
                later = middle;
            } else {
                notLater = middle;
            }
        }
        return later;
    }

    /** Writes mean times and values of the bins from an index on. */
    void copy(int from, double[] times, double[] values) {
        int start = slot(from);
        int count = size - from;
        int straight = Math.min(count, meanSeconds.length - start);
        System.arraycopy(meanSeconds, start, times, 0, straight);
        System.arraycopy(meanValue, start, values, 0, straight);
        System.arraycopy(meanSeconds, 0, times, straight, count - straight);
        System.arraycopy(meanValue, 0, values, straight, count - straight);
    }

    /** Distance between the least and the greatest sample of the bins from an index on. */
    double range(int from) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = from; i < size; i++) {
            int at = slot(i);
            least = leastValue[at] < least ? leastValue[at] : least;
            most = mostValue[at] > most ? mostValue[at] : most;
        }
        return most - least;
    }

    double meanSeconds(int index) {
        return meanSeconds[slot(index)];
    }

    double meanValue(int index) {
        return meanValue[slot(index)];
    }

    double leastValue(int index) {
        return leastValue[slot(index)];
    }

    double mostValue(int index) {
        return mostValue[slot(index)];
    }

    double firstSeconds(int index) {
        return firstSeconds[slot(index)];
    }

    /**
     * How far samples lie from a value on the side where they lie less far. A swing that lasted for some time counts for
     * three times as long after its end, so that the ringing after a step is soon forgotten and the quiet moment of a beat is not.
     *
     * @param margin what lies no farther is no swing
     * @return 0 where one side lies within the margin, or the swing is over
     */
    double swungBothWays(double value, double margin) {
        double above = 0;
        double below = 0;
        int first = -1;
        int last = -1;
        for (int i = 0; i < size; i++) {
            int at = slot(i);
            double up = mostValue[at] - value;
            double down = value - leastValue[at];
            above = Math.max(above, up);
            below = Math.max(below, down);
            if (Math.max(up, down) > margin) {
                first = first < 0 ? i : first;
                last = i;
            }
        }
        if (Math.min(above, below) <= margin) {
            return 0;
        }
        double lasted = meanSeconds(last) - meanSeconds(first);
        return meanSeconds(size - 1) - meanSeconds(last) > REMEMBERED * lasted ? 0 : Math.min(above, below);
    }

    /** Time of the first sample since the last clear, NaN where there is none. */
    double startSeconds() {
        if (size > 0) {
            return firstSeconds(0);
        }
        return openCount > 0 ? openFirstSeconds : Double.NaN;
    }

    private void close() {
        int at = slot(size);
        meanSeconds[at] = openSeconds;
        meanValue[at] = openValue;
        leastValue[at] = openLeast;
        mostValue[at] = openMost;
        firstSeconds[at] = openFirstSeconds;
        if (size < meanSeconds.length) {
            size++;
        } else {
            head = (head + 1) % meanSeconds.length;
        }
        openCount = 0;
    }

    /** Without a division, which would cost more than all else here. */
    private int slot(int index) {
        int at = head + index;
        return at < meanSeconds.length ? at : at - meanSeconds.length;
    }
}
