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
 */
public record ProbeSetup(String name, ProbeAddress address, Profile profile, Map<String, Role> roles) {
    public ProbeSetup {
        Objects.requireNonNull(profile);
        roles = Map.copyOf(roles);
    }

    /** The probe's channels; samples name them by index. */
    public List<Channel> channels() {
        return profile.channels();
    }
}
