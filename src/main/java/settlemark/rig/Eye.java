package settlemark.rig;

/** Reads jumping digits as a person does: a running mean over about three seconds. */
final class Eye {
    private static final double TAU_SECONDS = 3;
    private double mean = Double.NaN;
    private long lastNanos;

    void see(long timeNanos, double value) {
        if (Double.isNaN(value)) {
            return;
        }
        double seconds = (timeNanos - lastNanos) / 1e9;
        mean = Double.isNaN(mean) ? value : value + (mean - value) * StrictMath.exp(-seconds / TAU_SECONDS);
        lastNanos = timeNanos;
    }

    double mean() {
        return mean;
    }
}
