package settlemark.profile;

import java.util.List;
import java.util.Objects;

/** Whether a device in reach is what a profile describes. */
public sealed interface Match {
    /**
     * It is.
     *
     * @param marks what shows it, in words
     */
    record Fits(String marks) implements Match {
        public Fits {
            Objects.requireNonNull(marks);
        }
    }

    /**
     * It is not.
     *
     * @param reasons in words, one at least
     */
    record Differs(List<String> reasons) implements Match {
        public Differs {
            reasons = List.copyOf(reasons);
            if (reasons.isEmpty()) {
                throw new IllegalArgumentException("what differs has a reason");
            }
        }
    }
}
