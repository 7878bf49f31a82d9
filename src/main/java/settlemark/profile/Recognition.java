package settlemark.profile;

import com.google.re2j.Pattern;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** One way to recognise a device before it is opened; all that is given must be so. */
public sealed interface Recognition {
    /**
     * By what a Bluetooth Low Energy device advertises.
     *
     * @param name must be found in the advertised name
     * @param services that must be advertised, as a service or as service data
     * @param company identifier of manufacturer-specific data, 0 to 65535, from the Bluetooth assigned numbers
     */
    record Ble(Optional<Pattern> name, List<UUID> services, Optional<Integer> company) implements Recognition {
        public Ble {
            services = List.copyOf(services);
        }
    }

    /**
     * By what the operating system knows of a serial port.
     *
     * @param description must be found in the port's description
     * @param vendor USB vendor number, 0 to 65535
     * @param product USB product number, 0 to 65535
     */
    record Serial(Optional<Pattern> description, Optional<Integer> vendor, Optional<Integer> product)
            implements Recognition {}
}
