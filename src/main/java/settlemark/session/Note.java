package settlemark.session;

import java.time.Instant;
import java.util.Objects;
import java.util.OptionalLong;

/**
 * What somebody wrote beside a session, then or later.
 *
 * @param timeNanos session time that it is about, empty where it is about all of it
 * @param writtenAt wall clock
 * @param text 1 to {@value #MOST_CHARACTERS} characters
 */
public record Note(OptionalLong timeNanos, Instant writtenAt, String text) {
    public static final int MOST_CHARACTERS = 20_000;

    public Note {
        Objects.requireNonNull(timeNanos);
        Objects.requireNonNull(writtenAt);
        if (text.isBlank() || text.length() > MOST_CHARACTERS) {
            throw new IllegalArgumentException("a note has 1 to " + MOST_CHARACTERS + " characters, got "
                    + (text.isBlank() ? "none" : text.length()) + "; attach a longer text as a file");
        }
    }
}
