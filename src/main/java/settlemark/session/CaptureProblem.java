package settlemark.session;

import java.util.Objects;

/**
 * One thing that is wrong with a capture.
 *
 * @param line from 1
 * @param column in characters, from 1
 * @param damage false where the capture only ends early, as that of a killed program does
 * @param message what was found, what was expected and what became of it
 */
public record CaptureProblem(long line, int column, boolean damage, String message) {
    public CaptureProblem {
        Objects.requireNonNull(message);
        if (line < 1 || column < 1) {
            throw new IllegalArgumentException("lines and columns count from 1, got " + line + ":" + column);
        }
    }

    /** As printed after the file's name: {@code 14:9: message}. */
    @Override
    public String toString() {
        return line + ":" + column + ": " + (damage ? "" : "warning: ") + message;
    }
}
