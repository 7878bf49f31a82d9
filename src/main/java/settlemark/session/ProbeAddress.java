package settlemark.session;

import java.util.Objects;

/**
 * Where a probe is reached.
 *
 * @param scheme {@code serial} or {@code rig}
 * @param path what the scheme needs, such as {@code /dev/ttyUSB0}
 */
public record ProbeAddress(String scheme, String path) {
    public ProbeAddress {
        Objects.requireNonNull(scheme);
        Objects.requireNonNull(path);
    }

    @Override
    public String toString() {
        return scheme + ":" + path;
    }
}
