package settlemark.session;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import settlemark.profile.Profile;

/**
 * What came of reading a session again.
 *
 * @param session its number
 * @param kept as it is stored; empty where a new profile did not fit, and then nothing was stored
 * @param probes in the session's order
 * @param changes stage readings that differ from those of the day
 * @param lost what had no counterpart in a new profile
 */
public record RereadReport(
        long session,
        Optional<Rereading> kept,
        List<Probe> probes,
        List<ReadingChange> changes,
        List<Correction.Lost> lost) {
    public RereadReport {
        Objects.requireNonNull(kept);
        probes = List.copyOf(probes);
        changes = List.copyOf(changes);
        lost = List.copyOf(lost);
    }

    /**
     * One probe, as it was decoded on the day and now.
     *
     * @param name in the session
     * @param before profile of the day
     * @param after profile now
     * @param bytes that the session has of it
     * @param samplesBefore stored on the day
     * @param samplesAfter decoded now
     * @param rejectedBefore frames refused on the day
     * @param rejectedAfter frames refused now
     * @param firstRejected why the first was refused now, empty where none was
     */
    public record Probe(
            String name,
            Profile before,
            Profile after,
            long bytes,
            long samplesBefore,
            long samplesAfter,
            long rejectedBefore,
            long rejectedAfter,
            String firstRejected) {
        public boolean sameProfile() {
            return before.digest().equals(after.digest());
        }

        /** False where not one sample comes of all the bytes: by a new profile, or by the same without its key. */
        public boolean fits() {
            return bytes == 0 || samplesAfter > 0 || sameProfile() && samplesBefore == 0;
        }
    }
}
