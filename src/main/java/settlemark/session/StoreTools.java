package settlemark.session;

import java.nio.file.Path;
import java.time.Instant;

/** What is done to a workspace as a file. Each call takes as long as reading the whole file does. */
public interface StoreTools {
    /**
     * Looks whether everything is as it was stored; changes nothing, and may run while another process writes.
     *
     * @throws StoreException where it cannot be read at all: no workspace, a newer one, no right to it
     */
    CheckReport check(Path workspace) throws StoreException;

    /**
     * Saves what can be read of a damaged workspace into a new one, which then passes the check. The old one is not
     * touched.
     *
     * @param to a new file
     * @param now stands in the notes that say what a session has lost
     */
    RepairReport repair(Path workspace, Path to, Instant now) throws StoreException;

    /**
     * Gives unused room in a workspace back. The new form is checked before it takes the old one's place.
     *
     * @return bytes before and after
     */
    Sizes compact(Path workspace) throws StoreException;

    /**
     * Copies a workspace, also while another process writes to it: the copy is as it was at one moment, and is checked
     * before it gets its name.
     *
     * @param to a new file
     * @return what the check of the copy found, which is no damage unless the workspace itself has it
     */
    CheckReport backup(Path workspace, Path to) throws StoreException;

    /** Of a file, before and after. */
    record Sizes(long beforeBytes, long afterBytes) {}
}
