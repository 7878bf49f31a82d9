package settlemark.calc;

import java.util.Objects;

/**
 * One thing that the supply's pressures say.
 *
 * @param cause what it speaks for
 * @param reason the figures that it rests on
 * @param confirm what would settle it
 */
public record SupplyFinding(Cause cause, String reason, String confirm) {
    public SupplyFinding {
        Objects.requireNonNull(cause);
        Objects.requireNonNull(reason);
        Objects.requireNonNull(confirm);
    }

    /** Causes as far as pressures tell them apart. */
    public enum Cause {
        /** The drops are within their uncertainty or what any regulator needs. */
        NOTHING_SEEN,
        /** Low with nothing firing too. */
        SET_LOW,
        /** High with nothing firing. */
        HIGH_LOCK_UP,
        /** Something on this appliance's own branch: cock, connector, strainer. */
        BRANCH,
        /** Shared with the other loads: the pipe or the regulator, which the inlet alone cannot tell apart. */
        SHARED,
        /** The regulator does not hold: its outlet sags. */
        REGULATOR,
        /** The pipe between meter and appliance, the meter's outlet holding. */
        PIPE,
        /** The drop is there, what it belongs to cannot be told from these readings. */
        CANNOT_TELL
    }
}
