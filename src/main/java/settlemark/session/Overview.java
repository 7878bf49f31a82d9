package settlemark.session;

/**
 * A channel as the columns of a picture see it: of the measurements in each the smallest, largest, mean, first and last.
 * A column without any has count 0 and NaN.
 *
 * @param probe index in the header
 * @param channel index in the probe's profile
 * @param span from the first column's beginning to behind the last one's end, cut into columns of equal width
 * @param counts measurements in each column
 * @param mins smallest, in the channel's own unit
 * @param maxs largest
 * @param means arithmetic mean
 * @param firsts the first to arrive
 * @param lasts the last to arrive
 */
public record Overview(
        int probe,
        int channel,
        Span span,
        long[] counts,
        double[] mins,
        double[] maxs,
        double[] means,
        double[] firsts,
        double[] lasts) {
    /** How exactly a sample is put into its column. */
    public enum Edges {
        /**
         * Samples are counted by groups, a group in the column in which its first sample lies: quick, and off at an edge
         * by less than a column.
         */
        ALIGNED,
        /** Each sample is in the column that its time lies in. */
        EXACT
    }

    public int columns() {
        return counts.length;
    }
}
