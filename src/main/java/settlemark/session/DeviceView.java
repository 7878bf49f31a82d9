package settlemark.session;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import settlemark.profile.Profile;
import settlemark.session.ProbeHost.FoundProbe;

/**
 * A device as a list shows it, whether or not it is in use; immutable.
 *
 * @param probe what is in reach, or would be
 * @param fitting profiles by which it is recognised
 * @param use how it was used the last time, empty where it was not
 * @param battery as far as it is known
 * @param health empty where nothing is wrong
 */
public record DeviceView(
        FoundProbe probe,
        List<Profile> fitting,
        Optional<DeviceUse> use,
        Battery battery,
        Optional<ProbeView.Health> health) {
    public DeviceView {
        fitting = List.copyOf(fitting);
        Objects.requireNonNull(probe);
        Objects.requireNonNull(use);
        Objects.requireNonNull(battery);
        Objects.requireNonNull(health);
    }

    /**
     * A battery's charge.
     *
     * @param percent NaN where it is not known
     * @param isOfLastUse it is what the device said when it was used the last time, not now
     */
    public record Battery(double percent, boolean isOfLastUse) {
        public static final Battery UNKNOWN = new Battery(Double.NaN, false);

        public boolean isKnown() {
            return !Double.isNaN(percent);
        }
    }

    static DeviceView of(FoundProbe probe, List<Profile> fitting, Optional<DeviceUse> use, Battery battery) {
        return new DeviceView(probe, fitting, use, battery, DeviceHealth.of(probe, use, battery));
    }
}
