package settlemark.job;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.settle.FromInstrument;

/**
 * An instrument in a job.
 *
 * @param card what is known of it
 * @param places where it measures, with the name of its channel there; an empty name where that is not known
 * @param saidByProbe whether the probe itself said the serial number, else a person did
 * @param sinceNanos session time since which that holds
 */
public record InstrumentUse(InstrumentCard card, Map<Role, String> places, boolean saidByProbe, long sinceNanos) {
    public InstrumentUse {
        Objects.requireNonNull(card);
        places = places.isEmpty() ? Map.of() : Map.copyOf(new EnumMap<>(places));
    }

    /** What it adds where it indicates a value, the zero taken off. */
    public FromInstrument at(Role role, Unit unit, double indicated) {
        return card.at(places.getOrDefault(role, ""), unit, indicated);
    }
}
