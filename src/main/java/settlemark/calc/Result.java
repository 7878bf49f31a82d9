package settlemark.calc;

import java.util.List;
import java.util.Objects;
import settlemark.measure.Quantity;
import settlemark.measure.Unit;

/**
 * What a formula gives.
 *
 * @param formula name of the formula
 * @param quantity value, standard uncertainty by first-order propagation (JCGM 100:2008, 5.1.2), unit
 * @param source of the formula
 * @param validity where it holds
 * @param linear false where first-order propagation misses the spread of the result by more than a hundredth
 * @param contributions what each uncertain input adds, the largest first
 * @param warnings what a person must know before relying on it
 */
public record Result(
        String formula,
        Quantity quantity,
        String source,
        String validity,
        boolean linear,
        List<Contribution> contributions,
        List<String> warnings) {
    public Result {
        Objects.requireNonNull(formula);
        Objects.requireNonNull(quantity);
        Objects.requireNonNull(source);
        Objects.requireNonNull(validity);
        contributions = List.copyOf(contributions);
        warnings = List.copyOf(warnings);
    }

    /**
     * The same result in another unit.
     *
     * @throws IllegalArgumentException where the two units do not measure the same thing
     */
    public Result in(Unit unit) {
        double slope = Math.abs(quantity.unit().to(unit).slope());
        List<Contribution> changed = contributions.stream()
                .map(c -> new Contribution(c.key(), c.sensitivity(), c.standardUncertainty() * slope))
                .toList();
        return new Result(formula, quantity.to(unit), source, validity, linear, changed, warnings);
    }

    /**
     * What one input adds to the uncertainty.
     *
     * @param key of the input
     * @param sensitivity change of the result per change of the input, both in SI units
     * @param standardUncertainty that the input alone gives the result, in the result's unit
     */
    public record Contribution(String key, double sensitivity, double standardUncertainty) {}
}
