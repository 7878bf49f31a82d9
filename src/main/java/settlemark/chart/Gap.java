package settlemark.chart;

/**
 * A stretch without values.
 *
 * @param fromNanos time of the last value before it
 * @param toNanos time of the first value after it
 * @param before the last value, NaN where there was none
 * @param after the first value after it, NaN where there is none yet
 */
record Gap(long fromNanos, long toNanos, double before, double after) {
    /** How long it was, such as {@code gap 38 s}. */
    String words() {
        long seconds = Math.round((toNanos - fromNanos) / 1e9);
        if (seconds < 1) {
            return "gap";
        }
        if (seconds < 120) {
            return "gap " + seconds + " s";
        }
        return seconds % 60 == 0
                ? "gap " + seconds / 60 + " min"
                : "gap " + seconds / 60 + " min " + seconds % 60 + " s";
    }
}
