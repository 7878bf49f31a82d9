package settlemark.job;

/** What kind of act a step is. */
public enum StepKind {
    /** The rating plate is copied and confirmed. */
    PLATE,
    /** Each channel has a probe. */
    PROBES,
    /** Ports open to air: the offset of each pressure channel is taken. */
    ZERO,
    /** Supply pressure with nothing firing. */
    LOCK_UP,
    /** A stage as it was found. */
    FOUND,
    /** A stage adjusted, capped and read again as it is left. */
    LEFT,
    /** The valve shuts: the manifold must fall and stay at nothing. */
    SHUT,
    /** Ports open to air again: how far the zero drifted; then what the person ticks. */
    CLOSE,
    /** The record is handed over. */
    RECORD;

    public boolean firing() {
        return this == FOUND || this == LEFT;
    }

    public boolean measuring() {
        return switch (this) {
            case ZERO, LOCK_UP, FOUND, LEFT, SHUT, CLOSE -> true;
            case PLATE, PROBES, RECORD -> false;
        };
    }
}
