package settlemark.profile;

import java.util.List;
import java.util.Objects;

/**
 * Something that a person may have the device do, such as taking its zero.
 *
 * @param id key within the profile
 * @param label for people
 * @param caution what a person must know before it is done, may be empty
 * @param steps in order, one at least
 * @param line where the profile describes it
 */
public record Action(String id, String label, String caution, List<Step> steps, int line) {
    public Action {
        Objects.requireNonNull(id);
        Objects.requireNonNull(label);
        Objects.requireNonNull(caution);
        steps = List.copyOf(steps);
        if (steps.isEmpty()) {
            throw new IllegalArgumentException("an action has one step at least");
        }
    }
}
