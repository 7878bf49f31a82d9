package settlemark.measure;

import java.util.Locale;
import java.util.Optional;

/** Where on the appliance a channel is connected. Channels go by their role, never by a port's label or colour. */
public enum Role {
    INLET("inlet", Dimension.PRESSURE),
    MANIFOLD("manifold", Dimension.PRESSURE),
    SUPPLY("supply", Dimension.TEMPERATURE),
    RETURN("return", Dimension.TEMPERATURE),
    STACK("stack", Dimension.TEMPERATURE),
    /** Static pressure on the blower's side to the house. */
    SUPPLY_STATIC("supply-static", Dimension.PRESSURE),
    /** Static pressure on the blower's other side, below nothing as a rule. */
    RETURN_STATIC("return-static", Dimension.PRESSURE),
    /** Oxygen in the dry flue gas. */
    OXYGEN("o2", Dimension.FRACTION),
    /** Carbon dioxide in the dry flue gas. */
    CARBON_DIOXIDE("co2", Dimension.FRACTION),
    /** Carbon monoxide in the dry flue gas. */
    CARBON_MONOXIDE("co", Dimension.FRACTION),
    /** Carbon monoxide in the room's air. */
    ROOM_CARBON_MONOXIDE("room-co", Dimension.FRACTION);

    private final String word;
    private final Dimension dimension;

    Role(String word, Dimension dimension) {
        this.word = word;
        this.dimension = dimension;
    }

    /** The trade's word, lower case, as typed on a command line. */
    public String word() {
        return word;
    }

    /** Whether it is read on the flue gas or in the room by an analyser. */
    public boolean gasAnalysis() {
        return dimension == Dimension.FRACTION;
    }

    /** Whether a channel measures what this is: its dimension, and no battery or humidity for a gas's share. */
    public boolean fits(Channel channel) {
        return channel.dimension() == dimension
                && !(gasAnalysis() && channel.name().matches(".*(battery|humidity|moisture).*"));
    }

    /** Whether it is a static pressure of the air. */
    public boolean statics() {
        return this == SUPPLY_STATIC || this == RETURN_STATIC;
    }

    public Dimension dimension() {
        return dimension;
    }

    public static Optional<Role> ofWord(String word) {
        String lower = word.toLowerCase(Locale.ROOT);
        for (Role role : values()) {
            if (role.word.equals(lower)) {
                return Optional.of(role);
            }
        }
        return Optional.empty();
    }
}
