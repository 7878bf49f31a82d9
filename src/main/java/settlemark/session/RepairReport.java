package settlemark.session;

import java.nio.file.Path;
import java.util.List;

/**
 * What a repair saved and lost.
 *
 * @param from the damaged workspace, which is as it was
 * @param to the new one
 * @param steps what had to be done to the file before anything could be read, empty where nothing was
 * @param saved one for each session and rereading that is in the new one
 * @param lost what is not in it, or not as it was
 */
public record RepairReport(Path from, Path to, List<String> steps, List<Saved> saved, List<Damage> lost) {
    public RepairReport {
        steps = List.copyOf(steps);
        saved = List.copyOf(saved);
        lost = List.copyOf(lost);
    }

    /**
     * A session or rereading.
     *
     * @param of such as {@code session 3}
     * @param samples in the new workspace
     * @param samplesBefore that were stored; -1 where that cannot be known
     * @param events in the new workspace
     * @param readings in the new workspace
     */
    public record Saved(String of, long samples, long samplesBefore, long events, long readings) {}
}
