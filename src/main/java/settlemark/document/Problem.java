package settlemark.document;

import java.util.Comparator;
import java.util.Objects;

/**
 * One thing that is wrong with a document, where it is and what to do about it. Sorts by file, line and column.
 *
 * @param file name as the person gave it
 * @param line from 1
 * @param column in characters, from 1
 * @param severity an error makes the document unusable, a warning does not
 * @param message what, the value, what was expected, the remedy
 */
public record Problem(String file, int line, int column, Severity severity, String message)
        implements Comparable<Problem> {
    private static final Comparator<Problem> ORDER = Comparator.comparing(Problem::file)
            .thenComparingInt(Problem::line)
            .thenComparingInt(Problem::column)
            .thenComparing(Problem::severity)
            .thenComparing(Problem::message);

    public Problem {
        Objects.requireNonNull(file);
        Objects.requireNonNull(severity);
        Objects.requireNonNull(message);
        if (line < 1 || column < 1) {
            throw new IllegalArgumentException("lines and columns count from 1, got " + line + ":" + column);
        }
    }

    @Override
    public int compareTo(Problem other) {
        return ORDER.compare(this, other);
    }

    public boolean isError() {
        return severity == Severity.ERROR;
    }

    /** As printed: {@code draft.yaml:14:9: message}, a warning with the word before its message. */
    @Override
    public String toString() {
        String word = severity == Severity.WARNING ? "warning: " : "";
        return file + ":" + line + ":" + column + ": " + word + message;
    }
}
