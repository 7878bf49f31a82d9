package settlemark.calc;

import java.util.Objects;
import java.util.Optional;
import settlemark.measure.Unit;

/**
 * A limit as it was published. The rating plate and the local code override it.
 *
 * @param name words with hyphens
 * @param lower least that is allowed
 * @param nominal what is aimed at
 * @param upper most that is allowed
 * @param unit of all three
 * @param source where it is published
 * @param fromMemory whether the source was not at hand
 */
public record PublishedLimit(
        String name,
        Optional<Double> lower,
        Optional<Double> nominal,
        Optional<Double> upper,
        Unit unit,
        String source,
        boolean fromMemory) {
    public PublishedLimit {
        Objects.requireNonNull(name);
        Objects.requireNonNull(unit);
        if (source.isBlank()) {
            throw new IllegalArgumentException("the limit " + name + " needs a source");
        }
        if (lower.isEmpty() && nominal.isEmpty() && upper.isEmpty()) {
            throw new IllegalArgumentException("the limit " + name + " has no figure");
        }
    }
}
