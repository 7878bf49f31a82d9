package settlemark.session;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import settlemark.measure.Unit;

/**
 * How an instrument was last used.
 *
 * @param batteryPercent that it told last, NaN where it told none
 * @param batteryAt when, empty where it told none
 * @param zeros the last of each channel
 */
public record LastUse(double batteryPercent, Optional<Instant> batteryAt, List<Zero> zeros) {
    public static final LastUse NEVER = new LastUse(Double.NaN, Optional.empty(), List.of());

    public LastUse {
        zeros = List.copyOf(zeros);
        if (Double.isNaN(batteryPercent) != batteryAt.isEmpty()) {
            throw new IllegalArgumentException("a battery's charge has a time, and a time a charge");
        }
    }

    /**
     * What a channel showed with its port open.
     *
     * @param channel of the profile
     * @param value in the unit
     * @param takenAt wall clock
     * @param session key of the session that it was taken in
     */
    public record Zero(String channel, double value, Unit unit, Instant takenAt, String session) {}
}
