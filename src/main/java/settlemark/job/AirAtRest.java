package settlemark.job;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import settlemark.measure.Role;
import settlemark.measure.Unit;

/** Supply against return while nothing fires: what differs then is not one air, and a rise read from it is none of the burner's. */
final class AirAtRest {
    /** Common practice with the blower alone, degrees Fahrenheit; on top of it comes what the two probes may be out by. */
    private static final double ALIKE_FAHRENHEIT = 1;

    private static final double COVERAGE = 2;

    private AirAtRest() {}

    /** What there is to say; empty where they agree, or where one of them is missing or still moves. */
    static Optional<String> words(Map<Role, ChannelNow> channels) {
        ChannelNow supply = channels.get(Role.SUPPLY);
        ChannelNow back = channels.get(Role.RETURN);
        if (supply == null || back == null || !supply.settled() || !back.settled()) {
            return Optional.empty();
        }
        double apart = supply.settle().value() - back.settle().value();
        double allowed = Unit.FAHRENHEIT.to(supply.unit()).applyDifference(ALIKE_FAHRENHEIT)
                + COVERAGE * Math.hypot(uncertainty(supply), uncertainty(back));
        if (Math.abs(apart) <= allowed) {
            return Optional.empty();
        }
        return Optional.of(String.format(
                Locale.ROOT,
                "With nothing firing the supply stands %.1f %s %s the return. Run the blower alone for a minute: if they differ"
                        + " then too, the return probe is in other air than the furnace draws in.",
                Math.abs(apart),
                supply.unit().symbol(),
                apart > 0 ? "over" : "under"));
    }

    private static double uncertainty(ChannelNow now) {
        return now.instrumentUncertainty(now.settle().value());
    }
}
