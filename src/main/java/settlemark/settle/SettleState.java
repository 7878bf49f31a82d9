package settlemark.settle;

/**
 * What a detector knows at one instant; immutable. Numbers that the phase does not have are NaN. All in the unit of the
 * samples that were given.
 *
 * @param phase where the channel stands
 * @param timeSeconds time of the last sample that was taken in
 * @param couldMove upper bound, with the stated confidence, on how far the value could still move within the horizon
 * @param limit the drift limit that {@code couldMove} must not pass
 * @param swing half-width of the swings beyond noise
 * @param band widest swing half-width allowed
 * @param secondsToGo seconds until the window is filled or the dwell is over; 0 where nothing runs
 * @param windowStartSeconds start of the window that decided
 * @param value the reading, where settled
 * @param uncertainty its expanded uncertainty (about 95 %), where settled
 * @param reason one line that a technician believes
 */
public record SettleState(
        SettlePhase phase,
        double timeSeconds,
        double couldMove,
        double limit,
        double swing,
        double band,
        double secondsToGo,
        double windowStartSeconds,
        double value,
        double uncertainty,
        String reason) {

    public boolean settled() {
        return phase == SettlePhase.SETTLED;
    }

    /** The same knowledge after another sample that changed none of it. */
    SettleState at(double laterSeconds) {
        return new SettleState(
                phase,
                laterSeconds,
                couldMove,
                limit,
                swing,
                band,
                secondsToGo,
                windowStartSeconds,
                value,
                uncertainty,
                reason);
    }
}
