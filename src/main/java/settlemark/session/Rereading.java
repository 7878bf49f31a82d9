package settlemark.session;

import java.time.Instant;
import java.util.List;
import java.util.Objects;

/**
 * A stored session decoded again from its raw bytes, with profiles that may be others than those of the day. What was
 * decoded on the day stays beside it as it was.
 *
 * @param id within the workspace
 * @param session number of the session
 * @param number within the session, from 1
 * @param madeAt wall clock
 * @param version of the program that decoded
 * @param probes those of the session in their order, with the profiles and roles that were used this time
 */
public record Rereading(long id, long session, int number, Instant madeAt, String version, List<ProbeSetup> probes) {
    public Rereading {
        Objects.requireNonNull(madeAt);
        Objects.requireNonNull(version);
        probes = List.copyOf(probes);
    }
}
