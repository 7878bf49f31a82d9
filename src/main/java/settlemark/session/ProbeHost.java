package settlemark.session;

import java.util.List;
import java.util.Optional;
import settlemark.profile.Profile;
import settlemark.profile.Sighting;

/** The outside world of one scheme: what is in reach, and how to open it. */
public interface ProbeHost {
    /** The scheme of the addresses that it serves. */
    String scheme();

    /**
     * What is in reach now, without opening it. May take a second; never called on the event thread.
     *
     * @throws LinkException with the remedy, where that cannot be found out
     */
    List<FoundProbe> found() throws LinkException;

    /**
     * Opens a link; bytes begin to arrive at the listener.
     *
     * @param ticker gives the session time that chunks are stamped with
     * @throws LinkException with the remedy, where it cannot be opened
     */
    ProbeLink open(ProbeAddress address, Profile profile, Ticker ticker, LinkListener listener) throws LinkException;

    /**
     * Something in reach.
     *
     * @param address how to open it
     * @param description what the outside calls it
     * @param seen by what a profile can recognise it, empty where nothing is known
     */
    record FoundProbe(ProbeAddress address, String description, Optional<Sighting> seen) {
        public FoundProbe(ProbeAddress address, String description) {
            this(address, description, Optional.empty());
        }
    }
}
