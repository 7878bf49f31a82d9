package settlemark.measure;

import java.util.Locale;
import java.util.Optional;

/** Where on the appliance a channel is connected. Channels go by their role, never by a port's label or colour. */
public enum Role {
    INLET("inlet", Dimension.PRESSURE),
    MANIFOLD("manifold", Dimension.PRESSURE),
    SUPPLY("supply", Dimension.TEMPERATURE),
    RETURN("return", Dimension.TEMPERATURE),
    STACK("stack", Dimension.TEMPERATURE);

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
