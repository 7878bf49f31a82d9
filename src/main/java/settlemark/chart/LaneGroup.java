package settlemark.chart;

import java.util.List;
import java.util.stream.Stream;
import settlemark.measure.Role;

/** What shares a lane of a chart: things of one unit that lie near each other. */
public enum LaneGroup {
    PRESSURE(Double.NaN),
    /** Supply and return. */
    AIR(Double.NaN),
    /** The flue gas's temperature, far above the air's. */
    STACK(20),
    /** Oxygen and carbon dioxide, in percent. */
    SHARE(2),
    /** Carbon monoxide, in parts of a million. */
    TRACE(20);

    private final double leastSpan;

    LaneGroup(double leastSpan) {
        this.leastSpan = leastSpan;
    }

    public static LaneGroup of(Role role) {
        return switch (role) {
            case INLET, MANIFOLD, SUPPLY_STATIC, RETURN_STATIC -> PRESSURE;
            case SUPPLY, RETURN -> AIR;
            case STACK -> STACK;
            case OXYGEN, CARBON_DIOXIDE -> SHARE;
            case CARBON_MONOXIDE, ROOM_CARBON_MONOXIDE -> TRACE;
        };
    }

    /** Those of some roles, in order. */
    public static List<LaneGroup> of(List<Role> roles) {
        return Stream.of(values())
                .filter(group -> roles.stream().anyMatch(r -> of(r) == group))
                .toList();
    }

    /** Whether its axis follows what is drawn, and not the plate. */
    public boolean hasOwnAxis() {
        return !Double.isNaN(leastSpan);
    }

    /** The axis around values of a lane that has its own; a quiet trace is not blown up to look wild. */
    public ValueRange around(double... values) {
        return ValueRange.around(leastSpan, values);
    }
}
