package settlemark.profile;

import java.util.Objects;

/**
 * Something that a device says about itself in words, such as its serial number.
 *
 * @param id key within the profile
 * @param label for people
 * @param field where it stands; its content is {@link Field.Characters}
 * @param line where the profile describes it
 */
public record FactSource(String id, String label, FieldRef field, int line) {
    public FactSource {
        Objects.requireNonNull(id);
        Objects.requireNonNull(label);
        Objects.requireNonNull(field);
    }
}
