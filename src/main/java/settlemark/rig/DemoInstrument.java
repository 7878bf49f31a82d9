package settlemark.rig;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import settlemark.measure.Role;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;

/** An instrument of the demo rig: its short name, the shipped profile that its bytes follow, and where it is connected. */
public enum DemoInstrument {
    /** Two-port gauge on the inlet and the manifold tap. */
    GAUGE("demo-gauge", Map.of("port-1", Role.INLET, "port-2", Role.MANIFOLD)),
    /** Receiver of two air probes in the supply and the return duct. */
    AIR("demo-air", Map.of("probe-1", Role.SUPPLY, "probe-2", Role.RETURN));

    private final String profileId;
    private final Map<String, Role> roles;

    DemoInstrument(String profileId, Map<String, Role> roles) {
        this.profileId = profileId;
        this.roles = roles;
    }

    /** {@code gauge} or {@code air}: the probe's name, and the path of its address. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    public static Optional<DemoInstrument> ofKey(String key) {
        for (DemoInstrument instrument : values()) {
            if (instrument.key().equals(key)) {
                return Optional.of(instrument);
            }
        }
        return Optional.empty();
    }

    public String profileId() {
        return profileId;
    }

    public Profile profile() {
        return ProfileLibrary.get(profileId);
    }

    /** Channel name to the place where it is connected. */
    public Map<String, Role> roles() {
        return roles;
    }
}
