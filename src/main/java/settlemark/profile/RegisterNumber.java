package settlemark.profile;

import java.util.Optional;

/** Register numbers of the document to addresses as they travel. */
final class RegisterNumber {
    private RegisterNumber() {}

    /** The address of the first of some registers, empty where they do not all lie within 0 to 65535. */
    static Optional<Integer> address(Section section, int count, Connection connection) {
        int number = section.integer("register", 0);
        int base = connection.addressBase();
        int first = number - base;
        if (first >= 0 && first + count <= 0x10000) {
            return Optional.of(first);
        }
        section.error(
                "register",
                "registers go from " + base + " to " + (0xFFFF + base) + " (address-base " + base + "), got " + count
                        + " from " + number);
        return Optional.empty();
    }
}
