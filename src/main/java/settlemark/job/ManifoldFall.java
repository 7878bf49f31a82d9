package settlemark.job;

import java.util.Locale;

/**
 * Times the manifold's fall after the call has ended: from nine tenths of where it stood to one tenth. Gas itself
 * leaves in milliseconds; seconds are the valve.
 */
final class ManifoldFall {
    /** A fall slower than this is said; customary, no published limit. */
    static final double SLOW_SECONDS = 2;

    private double startInUnit = Double.NaN;
    private long fromNanos = -1;
    private long toNanos = -1;

    /** The next value, zero taken off; the first one is where it stood. */
    void see(long timeNanos, double value) {
        if (Double.isNaN(value) || toNanos >= 0) {
            return;
        }
        if (Double.isNaN(startInUnit)) {
            startInUnit = value;
            fromNanos = timeNanos;
        } else if (value > 0.9 * startInUnit) {
            fromNanos = timeNanos;
        } else if (value <= 0.1 * startInUnit) {
            toNanos = timeNanos;
        }
    }

    boolean seen() {
        return toNanos >= 0;
    }

    double seconds() {
        return (toNanos - fromNanos) / 1e9;
    }

    String words() {
        String fell = String.format(Locale.ROOT, "The manifold fell within %.1f s of the valve's closing.", seconds());
        return seconds() > SLOW_SECONDS ? fell + " The valve closes slowly." : fell;
    }
}
