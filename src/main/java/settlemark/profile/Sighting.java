package settlemark.profile;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;

/** What is known of a device in reach before it is opened. */
public sealed interface Sighting {
    /**
     * A serial port as the operating system shows it.
     *
     * @param description of the port, may be empty
     * @param vendor USB vendor number, empty where the port is none of USB
     * @param product USB product number
     */
    record Port(String description, Optional<Integer> vendor, Optional<Integer> product) implements Sighting {
        public Port {
            Objects.requireNonNull(description);
            Objects.requireNonNull(vendor);
            Objects.requireNonNull(product);
        }
    }

    /**
     * A Bluetooth Low Energy device as it advertises itself.
     *
     * @param name may be empty
     * @param services all that it advertises, as services or with data
     * @param companies identifiers of the manufacturer data that it advertises
     */
    record Radio(String name, List<UUID> services, List<Integer> companies) implements Sighting {
        public Radio {
            Objects.requireNonNull(name);
            services = List.copyOf(services);
            companies = List.copyOf(companies);
        }
    }
}
