package settlemark.settle;

/** Where a channel stands on its way to a reading. */
public enum SettlePhase {
    /** Nothing has arrived, or nothing since a gap. */
    NO_DATA,
    /** The shortest window is not filled yet. */
    FILLING,
    /** The remaining movement is not within the limit, or the swings are wider than the band. */
    MOVING,
    /** It may well be steady, but the noise is too large to prove it. */
    TOO_NOISY,
    /** Within the limit; the dwell time is running. */
    HOLDING,
    /** Proved: a value may be recorded. */
    SETTLED
}
