package settlemark.session;

import java.util.List;
import java.util.Optional;
import settlemark.job.InstrumentCard;

/** The instruments of a workspace, by their serial numbers. */
public interface Instruments {
    /** In order of serial numbers. */
    List<Kept> all() throws StoreException;

    Optional<Kept> find(String serial) throws StoreException;

    /** Keeps what is known of instruments, all or none, in the place of what was; how they were last used stays. */
    void put(List<InstrumentCard> cards) throws StoreException;

    /** Returns whether there was one. Records that it measured keep what was known of it. */
    boolean remove(String serial) throws StoreException;

    /** How an instrument was last used: a battery that it does not tell, and zeros of other channels, stay as they were. */
    void used(String serial, LastUse use) throws StoreException;

    /** An instrument and how it was last used. */
    record Kept(InstrumentCard card, LastUse lastUse) {}
}
