package settlemark.calc;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import settlemark.measure.Dimension;
import settlemark.measure.Quantity;
import settlemark.measure.Unit;

/**
 * A formula of the trade with all that must be known of it: what it asks for and in which range, its source and its
 * validity. Thread-safe and immutable; the same inputs always give the same result.
 */
public final class Formula {
    private final String name;
    private final String words;
    private final List<Parameter> parameters;
    private final List<List<String>> alternatives;
    private final Unit unit;
    private final Unit customary;
    private final Unit metric;
    private final String source;
    private final String validity;
    private final String leading;
    private final String width;
    private final boolean inLeading;
    private final ToDoubleFunction<Values> evaluation;
    private final Function<Values, List<String>> warnings;
    private final Function<Values, List<String>> refusals;

    Formula(FormulaBuilder draft) {
        name = draft.name;
        words = draft.words;
        parameters = List.copyOf(draft.parameters);
        alternatives = List.copyOf(draft.alternatives);
        unit = draft.unit;
        customary = draft.customary;
        metric = draft.metric;
        source = draft.source;
        validity = draft.validity;
        leading = draft.leading;
        width = draft.width;
        inLeading = draft.inLeading;
        evaluation = draft.evaluation;
        warnings = draft.warnings;
        refusals = draft.refusals;
    }

    public String name() {
        return name;
    }

    /** What it gives, for people. */
    public String words() {
        return words;
    }

    public List<Parameter> parameters() {
        return parameters;
    }

    /** Whether its numbers may come in any unit, all in one of the same kind. */
    public boolean inAnyUnit() {
        return !leading.isEmpty();
    }

    /** Keys of which exactly one must be given. */
    public List<List<String>> alternatives() {
        return alternatives;
    }

    /** Unit of the result where the inputs are in customary units. */
    public Unit customaryUnit() {
        return customary;
    }

    /** Unit of the result where the inputs are metric. */
    public Unit metricUnit() {
        return metric;
    }

    public String source() {
        return source;
    }

    public String validity() {
        return validity;
    }

    /**
     * Computes the result, in customary units where any input came in one, else in metric ones.
     *
     * @throws RefusedInputException with all that is missing, unknown, of another dimension or out of range
     */
    public Result of(Inputs given) throws RefusedInputException {
        Inputs inputs = leading.isEmpty() ? differences(given) : Conversions.inOneUnit(given, leading, width);
        Result result = result(checked(inputs), shownIn(inputs));
        return inLeading ? inLeadingUnit(result, given) : result;
    }

    /** The inputs as numbers in SI units; nothing stands in the way of computing with them. */
    private Draft checked(Inputs inputs) throws RefusedInputException {
        new InputCheck(this, inputs).run();
        Map<String, Integer> places = new LinkedHashMap<>();
        List<Double> x = new ArrayList<>();
        List<Double> u = new ArrayList<>();
        for (Parameter parameter : parameters) {
            if (parameter instanceof Parameter.Number number
                    && inputs.number(number.key()).isPresent()) {
                Quantity si = inputs.number(number.key()).get().to(number.unit());
                places.put(number.key(), x.size());
                x.add(si.value());
                u.add(si.standardUncertainty());
            }
        }
        Values values = new Values(places, array(x), inputs.choices());
        List<String> against = refusals.apply(values);
        if (!against.isEmpty()) {
            throw new RefusedInputException(against);
        }
        return new Draft(values, places, array(x), array(u));
    }

    /**
     * Checked inputs.
     *
     * @param places where each key's number is
     * @param x numbers in SI units
     * @param u their standard uncertainties
     */
    private record Draft(Values values, Map<String, Integer> places, double[] x, double[] u) {}

    /** The result in its SI unit as a function of the numbers given, in the parameters' order; the check of a spread. */
    ToDoubleFunction<double[]> function(Inputs given) throws RefusedInputException {
        Inputs inputs = leading.isEmpty() ? differences(given) : Conversions.inOneUnit(given, leading, width);
        Values values = checked(inputs).values();
        return numbers -> evaluation.applyAsDouble(values.withNumbers(numbers));
    }

    /** Unit that the result is computed in. */
    Unit unit() {
        return unit;
    }

    /** A rise said in degF or Cel is a difference on that scale. */
    private Inputs differences(Inputs given) {
        Inputs inputs = given;
        for (Parameter parameter : parameters) {
            if (parameter instanceof Parameter.Number number
                    && number.unit().dimension() == Dimension.TEMPERATURE_DIFFERENCE
                    && given.number(number.key()).isPresent()) {
                Quantity said = given.number(number.key()).get();
                inputs = inputs.with(
                        number.key(),
                        new Quantity(
                                said.value(),
                                said.standardUncertainty(),
                                said.unit().difference()));
            }
        }
        return inputs;
    }

    private Result result(Draft draft, Unit shown) throws RefusedInputException {
        Values values = draft.values();
        double value = evaluation.applyAsDouble(values);
        if (!Double.isFinite(value)) {
            throw new RefusedInputException(List.of(name + " has no result for these inputs; " + validity));
        }
        Propagation propagation =
                new Propagation(numbers -> evaluation.applyAsDouble(values.withNumbers(numbers)), draft.x(), draft.u());
        Quantity si = new Quantity(value, propagation.firstOrder(), unit);
        double slope = Math.abs(unit.to(shown).slope());
        List<Result.Contribution> contributions = new ArrayList<>();
        draft.places().forEach((key, i) -> {
            if (propagation.contribution(i) > 0) {
                contributions.add(
                        new Result.Contribution(key, propagation.sensitivity(i), propagation.contribution(i) * slope));
            }
        });
        contributions.sort(Comparator.comparing(Result.Contribution::standardUncertainty, Collections.reverseOrder()));
        boolean linear = propagation.isLinear();
        List<String> said = new ArrayList<>(warnings.apply(values));
        if (!linear) {
            said.add("the result does not follow its inputs in a straight line over their uncertainty: the stated"
                    + " uncertainty is an estimate only");
        }
        return new Result(name, si.to(shown), source, validity, linear, contributions, said);
    }

    private Result inLeadingUnit(Result result, Inputs given) {
        Quantity first = Objects.requireNonNull(given.numbers().get(leading));
        Quantity number = result.quantity();
        return new Result(
                name,
                new Quantity(number.value(), number.standardUncertainty(), first.unit()),
                source,
                validity,
                result.linear(),
                result.contributions(),
                result.warnings());
    }

    private Unit shownIn(Inputs inputs) {
        boolean inCustomary = inputs.numbers().values().stream()
                .map(q -> q.unit().code())
                .anyMatch(code -> code.contains("[") && !code.equals("[ppm]"));
        return inCustomary ? customary : metric;
    }

    private static double[] array(List<Double> numbers) {
        return numbers.stream().mapToDouble(Double::doubleValue).toArray();
    }

    @Override
    public String toString() {
        return name;
    }
}
