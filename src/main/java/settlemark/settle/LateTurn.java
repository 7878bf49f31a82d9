package settlemark.settle;

/**
 * Looks for a ramp that began so late that the bounds of a proof do not show it yet: an unknown more, zero before a time and
 * rising from it, beside the curve or the line.
 *
 * <p>It can only put a reading off, and only for a while: a ramp that goes on is then seen by the bounds themselves, while
 * swings within the band would be taken for turns for ever.
 */
final class LateTurn {
    /** When it may have begun, in shortest windows ago. */
    static final double[] BEGAN_SHARES = {0.2, 0.3, 0.45};
    /** The least movement within the horizon that counts, in limits. */
    static final double LEAST_LIMITS = 0.7;
    /** A line is so sure of its level that a smaller turn shows in its own bound. */
    static final double LEAST_LIMITS_BESIDE_LINE = 1.25;

    // In shortest windows.
    private static final double PATIENCE_SHARE = 0.75;
    private static final double PATIENCE_SHARE_OF_LINE = 0.4;

    private final double windowSeconds;
    private final boolean leftOut;
    private double sinceSeconds = Double.NaN;

    LateTurn(SettleSettings settings, boolean leftOut) {
        this.windowSeconds = settings.windowSeconds().get(0);
        this.leftOut = leftOut;
    }

    /** Whether the reading waits, of a proof that holds and whose dwell is over. */
    boolean putsOff(Proof proof, double nowSeconds) {
        if (leftOut || !proof.turnsLately()) {
            return false;
        }
        if (Double.isNaN(sinceSeconds)) {
            sinceSeconds = nowSeconds;
        }
        double share = proof instanceof LineProof ? PATIENCE_SHARE_OF_LINE : PATIENCE_SHARE;
        return nowSeconds - sinceSeconds < share * windowSeconds;
    }

    /** A new segment, or a reading that was taken back. */
    void clear() {
        sinceSeconds = Double.NaN;
    }
}
