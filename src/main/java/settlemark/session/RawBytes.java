package settlemark.session;

/** Whether a session keeps the bytes that its probes sent. */
public enum RawBytes {
    /** Everything can be decoded again and proved. */
    KEPT,
    /**
     * Only what was decoded on the day is kept. A wrong profile can no longer be put right, nothing proves what a gauge
     * said, and no record can be made.
     */
    DROPPED;

    /** What dropping them costs, in words for a person. */
    public static final String COST = "without the probes' bytes a wrong profile cannot be put right later, nothing"
            + " proves what a gauge said, and no record can be made of the session";

    /** Refuses what cannot be done without them. */
    public static void require(SessionStore store, long session) throws StoreException {
        if (store.rawBytes(session) == DROPPED) {
            throw new StoreException(
                    StoreException.Cause.FAULT,
                    "session " + session + " was stored without its probes' bytes, so it cannot be decoded again: "
                            + COST + "; what was decoded on the day can still be read and exported");
        }
    }
}
