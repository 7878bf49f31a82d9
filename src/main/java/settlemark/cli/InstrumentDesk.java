package settlemark.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import settlemark.job.InstrumentCard;
import settlemark.session.Instruments.Kept;
import settlemark.session.StoreException;

/** What the commands ask of the instruments of a workspace. */
public interface InstrumentDesk {
    /** In order of serial numbers; none where the person has no workspace yet. */
    List<Kept> all(Optional<Path> workspace) throws StoreException;

    /** Their serial numbers; none where there is no such workspace yet. */
    Set<String> serials(Optional<Path> workspace) throws StoreException;

    /** All of them or none; makes the workspace where there is none. */
    void put(Optional<Path> workspace, List<InstrumentCard> cards) throws StoreException;

    /** Returns whether there was one. */
    boolean remove(Optional<Path> workspace, String serial) throws StoreException;

    LocalDate today();
}
