package settlemark.session;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import settlemark.measure.Channel;
import settlemark.measure.Role;
import settlemark.profile.Profile;

/**
 * One probe of a session.
 *
 * @param name short name, unique in the session, such as {@code gauge}
 * @param address where it is
 * @param profile what its bytes mean
 * @param roles channel name of the profile to the place where it is connected
 * @param identity what stays the same of the device when its plug goes elsewhere; empty where nothing is known
 */
public record ProbeSetup(String name, ProbeAddress address, Profile profile, Map<String, Role> roles, String identity) {
    public ProbeSetup {
        Objects.requireNonNull(profile);
        Objects.requireNonNull(identity);
        roles = Map.copyOf(roles);
    }

    /** A probe of which nothing stays the same but its name. */
    public ProbeSetup(String name, ProbeAddress address, Profile profile, Map<String, Role> roles) {
        this(name, address, profile, roles, "");
    }

    /** The probe's channels; samples name them by index. */
    public List<Channel> channels() {
        return profile.channels();
    }
}
