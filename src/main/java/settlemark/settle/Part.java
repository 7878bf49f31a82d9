package settlemark.settle;

/** Parts of the detector that can be left out, to see what each buys; all are in it but for that. */
enum Part {
    /** A longer window that is a ramp speaks against a shorter one that is not. */
    RAMPS_OBJECT,
    /** A window that bends towards movement speaks against any other. */
    BENDS_OBJECT,
    /** Swings beyond the band, to both sides and longer ago, speak against a window that is quiet (gas). */
    SWINGS_OBJECT,
    /** After a movement was found out the shortest window alone is no proof. */
    CAUTION_AFTER_MOVEMENT,
    /** What came before a movement that was found out is forgotten. */
    FORGETTING,
    /** A ramp that may have begun a moment ago puts a reading off. */
    TURNS_PUT_OFF,
    /** A slow swing is no movement where its mean over whole periods stays (temperatures). */
    SWINGS_AVERAGED
}
