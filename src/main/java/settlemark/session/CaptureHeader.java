package settlemark.session;

import java.time.ZonedDateTime;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;

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

    /** What the name of a probe may be. */
    public static final String NAME_WORDS =
            "1 to 40 letters a to z, digits, points, underscores and hyphens, a letter or digit first";

    /**
     * One probe of a capture. What is not known is empty.
     *
     * @param name short name, unique in the capture, such as {@code gauge}
     * @param profile id of the profile that it was opened with
     * @param digest SHA-256 of that profile's text, 64 lower-case hexadecimal digits
     * @param address where it was, such as {@code serial:/dev/ttyUSB0}
     */
    public record Probe(String name, String profile, String digest, String address) {
        private static final Pattern NAME = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]{0,39}");

        public Probe {
            if (!isName(name)) {
                throw new IllegalArgumentException(
                        "a probe's name in a capture is " + NAME_WORDS + ", got \"" + name + "\"");
            }
            Objects.requireNonNull(profile);
            Objects.requireNonNull(digest);
            Objects.requireNonNull(address);
        }

        /** Whether a name is {@link #NAME_WORDS}. */
        public static boolean isName(String name) {
            return NAME.matcher(name).matches();
        }
    }
}
