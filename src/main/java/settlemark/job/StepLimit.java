package settlemark.job;

import java.util.Objects;

/**
 * What a plan holds a step's reading against, beside the rating plate.
 *
 * @param subject what is judged: {@code inlet}, {@code manifold}, {@code rise}, or the change of a trapped pressure,
 *     {@code inlet change}
 * @param limit the range and who says so
 */
public record StepLimit(String subject, Limit limit) {
    /** Ends the subjects that are changes over a watched time. */
    static final String CHANGE = " change";

    public StepLimit {
        Objects.requireNonNull(limit);
        if (subject.isBlank()) {
            throw new IllegalArgumentException("a limit says what it judges");
        }
    }

    /** The limit on how far a pressure moved while it was watched. */
    boolean isChange() {
        return subject.endsWith(CHANGE);
    }
}
