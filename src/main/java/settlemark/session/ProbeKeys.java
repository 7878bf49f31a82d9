package settlemark.session;

import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import settlemark.profile.ByteText;
import settlemark.profile.Profile;
import settlemark.profile.Secrets;

/**
 * The keys of probes whose frames are protected, by the names of the probes. Never stored and never printed.
 *
 * @param keys 16 bytes each
 */
public record ProbeKeys(Map<String, ByteText> keys) {
    public static final ProbeKeys NONE = new ProbeKeys(Map.of());

    public ProbeKeys {
        keys = Map.copyOf(keys);
    }

    /** What the probe's frames need, with the address where the probe has one. */
    Secrets of(ProbeSetup probe) {
        return new Secrets(probe.address().radioBytes(), keys.getOrDefault(probe.name(), ByteText.EMPTY));
    }

    public boolean has(String probe) {
        return keys.containsKey(probe);
    }

    public Set<String> names() {
        return new TreeSet<>(keys.keySet());
    }

    /** Whether frames of such a device may be protected. */
    public static boolean mayNeedOne(Profile profile) {
        return profile.messages().stream().anyMatch(m -> m.cipher().isPresent());
    }

    /** Without the keys. */
    @Override
    public String toString() {
        return "ProbeKeys" + names();
    }
}
