package settlemark.profile;

/** How much one profile may hold, as its schema says it too; the text itself is bounded by the document's limits. */
final class ProfileLimits {
    static final int MESSAGES = 64;
    /** In one message. */
    static final int FIELDS = 256;

    static final int CHANNELS = 64;
    static final int FACTS = 64;
    static final int ACTIONS = 64;
    /** In a start-up or an action. */
    static final int STEPS = 64;

    static final int RECOGNITIONS = 64;
    static final int EXAMPLES = 1000;
    static final int TABLE_POINTS = 1000;
    static final int COEFFICIENTS = 10;
    static final int FRAME_BYTES = 1 << 16;

    private ProfileLimits() {}
}
