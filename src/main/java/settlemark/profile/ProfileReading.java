package settlemark.profile;

import java.util.List;
import java.util.Optional;
import settlemark.document.Problem;

/**
 * What came of reading a profile.
 *
 * @param profile empty where one of the problems is an error
 * @param problems all of them in the order of the text; warnings can stand beside a profile
 */
public record ProfileReading(Optional<Profile> profile, List<Problem> problems) {
    public ProfileReading {
        problems = List.copyOf(problems);
        if (profile.isPresent() == problems.stream().anyMatch(Problem::isError)) {
            throw new IllegalArgumentException("a profile has no errors, and what has no errors is a profile");
        }
    }

    /** The profile of a document that must be good, such as a shipped one. */
    public Profile orThrow() {
        return profile.orElseThrow(() -> new IllegalStateException("not a good profile: " + problems));
    }
}
