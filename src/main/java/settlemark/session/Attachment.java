package settlemark.session;

import java.time.Instant;
import java.util.Objects;

/**
 * A file that somebody put beside a session, such as a photograph of the rating plate; its content is asked for alone.
 *
 * @param id within the workspace
 * @param name of the file, without folders
 * @param mediaType such as {@code image/jpeg}
 * @param addedAt wall clock
 * @param digest SHA-256 of the content, hexadecimal
 * @param bytes of the content, 1 to {@value #MOST_BYTES}
 */
public record Attachment(long id, String name, String mediaType, Instant addedAt, String digest, long bytes) {
    public static final long MOST_BYTES = 64L << 20;
    public static final int MOST_NAME_CHARACTERS = 200;

    public Attachment {
        Objects.requireNonNull(mediaType);
        Objects.requireNonNull(addedAt);
        Objects.requireNonNull(digest);
        checkName(name);
        checkSize(name, bytes);
    }

    /** @throws IllegalArgumentException with the remedy where it is no plain name of a file */
    public static void checkName(String name) {
        boolean plain = !name.isBlank()
                && name.length() <= MOST_NAME_CHARACTERS
                && !name.equals(".")
                && !name.equals("..")
                && name.chars().noneMatch(c -> c == '/' || c == '\\' || Character.isISOControl(c));
        if (!plain) {
            throw new IllegalArgumentException("an attachment's name has 1 to " + MOST_NAME_CHARACTERS
                    + " characters, and no folder or control character is among them; got \""
                    + name.replaceAll("\\p{Cntrl}", "?") + "\"");
        }
    }

    /** @throws IllegalArgumentException with the remedy where it is empty or too large */
    public static void checkSize(String name, long bytes) {
        if (bytes < 1 || bytes > MOST_BYTES) {
            throw new IllegalArgumentException("attachment \"" + name + "\" must have 1 to " + MOST_BYTES
                    + " bytes, got " + bytes + "; keep larger files beside the workspace and name them in a note");
        }
    }
}
