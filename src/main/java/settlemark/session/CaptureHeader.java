package settlemark.session;

import java.time.ZonedDateTime;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What a capture says before its first bytes.
 *
 * @param start wall clock at session time 0, for labels; empty where the capture does not say
 * @param probes whose bytes it holds; events name them by their index
 */
public record CaptureHeader(Optional<ZonedDateTime> start, List<Probe> probes) {
    public CaptureHeader {
        Objects.requireNonNull(start);
        probes = List.copyOf(probes);
    }

    /**
     * One probe of a capture. What is not known is empty.
     *
     * @param name short name, unique in the capture, such as {@code gauge}
     * @param profile id of the profile that it was opened with
     * @param digest SHA-256 of that profile's text, 64 lower-case hexadecimal digits
     * @param address where it was, such as {@code serial:/dev/ttyUSB0}
     */
    public record Probe(String name, String profile, String digest, String address) {
        public Probe {
            Objects.requireNonNull(name);
            Objects.requireNonNull(profile);
            Objects.requireNonNull(digest);
            Objects.requireNonNull(address);
        }
    }
}
