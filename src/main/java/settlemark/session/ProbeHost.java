package settlemark.session;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import settlemark.profile.Profile;

/** The outside world of one scheme: what is in reach, and how to open it. */
public interface ProbeHost {
    /** The scheme of the addresses that it serves. */
    String scheme();

    /** What is in reach now, without opening it. May take a second; never called on the event thread. */
    List<FoundProbe> found();

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
     * @param vendor USB vendor number, 0 to 65535
     * @param product USB product number, 0 to 65535
     * @param identity what stays the same of it when its plug goes elsewhere; empty where nothing is known
     */
    record FoundProbe(
            ProbeAddress address,
            String description,
            Optional<Integer> vendor,
            Optional<Integer> product,
            String identity) {
        public FoundProbe {
            Objects.requireNonNull(address);
            Objects.requireNonNull(description);
            Objects.requireNonNull(vendor);
            Objects.requireNonNull(product);
            Objects.requireNonNull(identity);
        }

        /** Something of which nothing else is known. */
        public FoundProbe(ProbeAddress address, String description) {
            this(address, description, Optional.empty(), Optional.empty(), "");
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
