package settlemark.settle;

import org.jspecify.annotations.Nullable;

/**
 * What a detector knows at one instant, described when somebody asks. Whether it is settled is known at once; the numbers and
 * the sentence beside it are made at the first {@link #state}, which must come before the detector takes another sample in.
 *
 * <p>For the detector's own thread.
 */
public final class SettleLook {
    private final boolean settled;
    private final @Nullable SettleDetector detector;
    private @Nullable SettleState described;

    /** One that is described already. */
    public SettleLook(SettleState state) {
        settled = state.settled();
        detector = null;
        described = state;
    }

    SettleLook(SettleDetector detector, boolean settled) {
        this.settled = settled;
        this.detector = detector;
    }

    public boolean settled() {
        return settled;
    }

    /**
     * The whole of it; the same object whenever it is asked.
     *
     * @throws IllegalStateException where the detector has moved on and nobody had asked before
     */
    public SettleState state() {
        SettleState known = described;
        if (known == null) {
            if (detector == null || detector.look() != this) {
                throw new IllegalStateException("the detector has moved on since");
            }
            known = detector.state();
            described = known;
        }
        return known;
    }
}
