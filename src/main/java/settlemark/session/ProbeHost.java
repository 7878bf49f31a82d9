package settlemark.session;

import java.util.List;
import java.util.Objects;
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
     * @param identity what stays the same of it when its plug goes elsewhere; empty where nothing is known
     * @param reception how it is heard, empty for a device on a wire
     */
    record FoundProbe(
            ProbeAddress address,
            String description,
            Optional<Sighting> seen,
            String identity,
            Optional<Reception> reception) {
        public FoundProbe {
            Objects.requireNonNull(address);
            Objects.requireNonNull(description);
            Objects.requireNonNull(seen);
            Objects.requireNonNull(identity);
            Objects.requireNonNull(reception);
        }

        /** A device on a wire. */
        public FoundProbe(ProbeAddress address, String description, Optional<Sighting> seen, String identity) {
            this(address, description, seen, identity, Optional.empty());
        }

        public FoundProbe(ProbeAddress address, String description, Optional<Sighting> seen) {
            this(address, description, seen, "");
        }

        /** A device that is known and of which nothing is heard or seen now is not in reach. */
        public boolean inReach() {
            return reception.map(Reception::inReach).orElse(true);
        }

        /** Something of which nothing else is known. */
        public FoundProbe(ProbeAddress address, String description) {
            this(address, description, Optional.empty(), "");
        }
    }

    /**
     * What stays the same of the device at an address when its plug goes elsewhere, without opening it; empty where
     * nothing is known.
     *
     * @throws LinkException with the remedy, where there is no such device
     */
    default String identity(ProbeAddress address) throws LinkException {
        return "";
    }
}
