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
    /** Supply pressure with this appliance alone at its highest fire. */
    THIS_APPLIANCE,
    /** Supply pressure with every appliance on the supply at its highest fire. */
    ALL_APPLIANCES,
    /** A stage as it was found. */
    FOUND,
    /** A stage adjusted, capped and read again as it is left. */
    LEFT,
    /** The valve shuts: the manifold must fall and stay at nothing. */
    SHUT,
    /** A trapped pressure is watched for a time: it must neither fall nor rise. */
    HOLD,
    /** A stage's input by the gas meter: its dial is timed by the person's presses. */
    CLOCK,
    /** Static pressures of the air before and after the blower, by probes or typed. */
    STATICS,
    /** A stage's flue gas, by probes or typed. */
    COMBUSTION,
    /** Things that a person does and ticks, nothing is read. */
    CHECK,
    /** Ports open to air again: how far the zero drifted; then what the person ticks. */
    CLOSE,
    /** The record is handed over. */
    RECORD;

    /** Whether its reading is of a firing stage. */
    public boolean firing() {
        return this == FOUND || this == LEFT;
    }

    /** Whether it names a firing stage. */
    public boolean staged() {
        return firing() || this == CLOCK || this == COMBUSTION;
    }

    /** Whether its values may be typed where no probe gives them. */
    public boolean typed() {
        return this == STATICS || this == COMBUSTION;
    }

    public boolean measuring() {
        return switch (this) {
            case ZERO, LOCK_UP, THIS_APPLIANCE, ALL_APPLIANCES, FOUND, LEFT, SHUT, HOLD, STATICS, COMBUSTION, CLOSE ->
                true;
            case PLATE, PROBES, CLOCK, CHECK, RECORD -> false;
        };
    }

    /** Whether its reading is a column of the stage table. */
    public boolean tabled() {
        return measuring() && this != ZERO && this != CLOSE && !typed();
    }
}
