package settlemark.session;

import java.nio.file.Path;
import java.util.List;

/**
 * What a check of a workspace found.
 *
 * @param file the workspace
 * @param format of its tables
 * @param contents what could be read
 * @param damage what is not as it was stored, in the order in which it was found
 * @param more so many more were found and are not listed
 */
public record CheckReport(Path file, int format, Contents contents, List<Damage> damage, long more) {
    public CheckReport {
        damage = List.copyOf(damage);
    }

    /** Whether everything is as it was stored. */
    public boolean whole() {
        return damage.isEmpty();
    }

    /**
     * How much a workspace holds.
     *
     * @param sessions with a header that can be read
     * @param rereadings complete ones
     * @param samples of all sessions and rereadings
     * @param events of all sessions
     * @param readings of all sessions and rereadings
     * @param notes that people wrote
     * @param attachments that people added
     */
    public record Contents(
            long sessions, long rereadings, long samples, long events, long readings, long notes, long attachments) {}
}
